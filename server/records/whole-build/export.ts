import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { buildView, showBuild } from '../builds/view.ts';
import { callView, showCall } from '../calls/view.ts';
import { lashLineView, showLashLine } from '../lash-log/view.ts';
import type { BuildRecord } from './build-record.ts';
import { eventView, showEvent } from './event-view.ts';
import { shapeOf, shownOf } from './record-part.ts';
import { RECORD_PARTS } from './record-parts.ts';

const told = <Schema extends z.ZodType>(schema: Schema, description: string) =>
  z.array(schema).meta({ description });

/** A build with all that was ever entered, as one document. */
export const exportView = z
  .object({
    format: z.literal('benchcall-build-1'),
    exportedAt: z.iso.datetime(),
    build: buildView,
    calls: told(callView, 'the calls about it, with goal, caller and stop; a builder’s link gives its own'),
    ...shapeOf(RECORD_PARTS),
    lashLog: told(
      lashLineView,
      'lash of each valve by day: hot or cold, found or set, whether the adjuster had moved',
    ),
    events: told(eventView, 'the record line by line, the figures kept of a ratio’s consequences among it'),
  })
  .meta({ id: 'BuildExport' });

/** What an export reads of a build: more lines than any page shows. */
export const FOR_EXPORT = { mostEvents: 100_000, catalogue: 'no' } as const;

export const exportBuild = (record: BuildRecord, now: Date) =>
  answer(exportView, {
    format: 'benchcall-build-1',
    exportedAt: now.toISOString(),
    build: showBuild(record.build),
    calls: record.calls.map(showCall),
    ...shownOf(RECORD_PARTS, record, record.build.id),
    lashLog: record.lashLines.map(showLashLine),
    events: record.events.map(showEvent),
  });
