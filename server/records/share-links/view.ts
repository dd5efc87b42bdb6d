import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
import type { ShareLink } from './share-links.ts';

export const shareLinkView = z
  .object({
    id: z.uuid(),
    holder: z.string(),
    callId: z.uuid(),
    createdAt: moment,
    expiresAt: moment,
    revokedAt: moment.optional(),
  })
  .meta({ id: 'ShareLink' });

export const showShareLink = (link: ShareLink) =>
  answer(shareLinkView, {
    id: link.id,
    holder: link.holder,
    callId: link.callId,
    createdAt: link.createdAt.toISOString(),
    expiresAt: link.expiresAt.toISOString(),
    revokedAt: link.revokedAt?.toISOString(),
  });
