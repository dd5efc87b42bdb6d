import { z } from 'zod';
import { jsonObject } from '../../../shared/schemas/answer-parts.ts';
import type { RecordedEvent } from '../../events/build-events.ts';
import { ALL_EVENTS } from './record-parts.ts';

const shape = {
  seq: z.int(),
  by: z.string(),
  byKind: z.string(),
  at: z.iso.datetime(),
  typedAt: z.iso
    .datetime()
    .optional()
    .meta({ description: 'when it was typed, by the clock of the phone, which may be wrong' }),
  beforeStop: z
    .literal(true)
    .optional()
    .meta({ description: 'said with it: it was read before the stop that stood when it came' }),
};

/** `reading-kept` is `ReadingKeptEvent` in the document. */
const idOf = (name: string): string =>
  `${name.replace(/(^|-)([a-z])/g, (_, __, letter: string) => letter.toUpperCase())}Event`;

const VIEWS = Object.values(ALL_EVENTS).map(({ name, data }) =>
  z.object({ ...shape, kind: z.literal(name), data: data.strict() }).meta({ id: idOf(name) }),
);

const unread = z
  .object({
    ...shape,
    kind: z.literal('not-read'),
    recordedAs: z.string().meta({ description: 'the kind it was kept as' }),
    data: z.record(z.string(), z.unknown()).meta({ description: 'all that was kept with it' }),
  })
  .meta({ id: 'UnreadEvent', description: 'an event that this version of the service can’t read' });

/** An event of a build's log as JSON has it: its kind says what is kept with it. */
export const eventView = z.discriminatedUnion('kind', [unread, ...VIEWS]).meta({ id: 'Event' });

const viewOf = new Map<string, (typeof VIEWS)[number]>(
  VIEWS.map((view) => [view.shape.kind.value, view] as const),
);

/** Nothing that was kept is left out; what was not kept yet when it was written reads as its default. */
export function showEvent({ seq, kind, data, by, byKind, at, typedAt, beforeStop }: RecordedEvent) {
  const shown = {
    seq,
    kind,
    data: jsonObject(data),
    by,
    byKind,
    at: at.toISOString(),
    ...(typedAt === undefined ? {} : { typedAt: typedAt.toISOString() }),
    ...(beforeStop === undefined ? {} : { beforeStop }),
  };
  const read = viewOf.get(kind)?.safeParse(shown);
  if (read?.success !== true) return { ...shown, kind: 'not-read' as const, recordedAs: kind };
  return { ...shown, kind: read.data.kind, data: { ...read.data.data, ...data } };
}
