import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { jsonObject, moment } from '../../shared/schemas/answer-parts.ts';
import type { RecordedEvent } from './build-events.ts';

export const eventView = z
  .object({
    seq: z.int(),
    kind: z.string(),
    data: z.record(z.string(), z.unknown()),
    by: z.string(),
    byKind: z.string(),
    at: moment,
  })
  .meta({ id: 'Event' });

export const showEvent = (event: RecordedEvent) =>
  answer(eventView, {
    seq: event.seq,
    kind: event.kind,
    data: jsonObject(event.data),
    by: event.by,
    byKind: event.byKind,
    at: event.at.toISOString(),
  });
