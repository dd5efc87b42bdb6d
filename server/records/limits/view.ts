import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment, quantityView } from '../../../shared/schemas/answer-parts.ts';
import type { Limit } from './known-limits.ts';

export const limitView = z
  .object({
    name: z.string(),
    title: z.string(),
    value: quantityView,
    source: z.string(),
    revision: z.int().meta({ description: '0 for the default that comes with the service' }),
    by: z.string().optional(),
    at: moment.optional(),
  })
  .meta({ id: 'Limit' });

export const showLimit = (limit: Limit) =>
  answer(limitView, {
    name: limit.name,
    title: limit.title,
    value: limit.value,
    source: limit.source,
    revision: limit.revision,
    by: limit.by,
    at: limit.at?.toISOString(),
  });
