import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { answerView, showAnswer } from '../answers/view.ts';
import { armView, placementView, showArm, showPlacement } from '../arms/view.ts';
import { eventView, showEvent } from '../build-log/event-view.ts';
import { buildView, revisionView, showBuild, showRevision } from '../builds/view.ts';
import { callView, showCall } from '../calls/view.ts';
import { lashLineView, showLashLine } from '../lash-log/view.ts';
import { noteView, showNote } from '../notes/view.ts';
import { partReadingView, showPartReading } from '../part-readings/view.ts';
import { exportedPhotographView, showExportedPhotograph } from '../photographs/view.ts';
import { readingView, showReading } from '../readings/view.ts';
import { setUpView, showSetUp } from '../set-ups/view.ts';
import { sheetReadingView, showSheetReading } from '../sheet/view.ts';
import { showTipMark, tipMarkView } from '../tip-marks/view.ts';
import { showWorking, workingView } from '../workings/view.ts';
import type { BuildRecord } from './build-record.ts';

const told = <Schema extends z.ZodType>(schema: Schema, description: string) =>
  z.array(schema).meta({ description });

/** A build with all that was ever entered, as one document. */
export const exportView = z
  .object({
    format: z.literal('benchcall-build-1'),
    exportedAt: z.iso.datetime(),
    build: buildView,
    calls: told(callView, 'the calls about it, with goal, caller and hold; a builder’s link gives its own'),
    revisions: told(revisionView, 'the build as it stood at each revision, with the reason'),
    arms: told(armView, 'arms with their three marks, word for word'),
    placements: told(placementView, 'which arm was put on which valve, in order: the swaps'),
    setUps: told(setUpView, 'how each set of passes was measured'),
    readings: told(readingView, 'every pass, replaced and struck ones included'),
    sheetReadings: told(sheetReadingView, 'readings of the per-valve sheet: lifts, lash and gaps'),
    partReadings: told(partReadingView, 'sizes, features and marks of the part in the hand'),
    tipMarks: told(tipMarkView, 'marks on stem ends, replaced and struck ones included'),
    lashLog: told(
      lashLineView,
      'lash of each valve by day: hot or cold, found or set, whether the nut had moved',
    ),
    workings: told(workingView, 'computations kept with the build, with what went in'),
    photographs: told(exportedPhotographView, 'what each shows and proves; the picture is at its address'),
    answers: told(answerView, 'what was answered when the readings raised a question'),
    notes: told(noteView, 'notes, advice with what it rests on, and promises with owner, date and done'),
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
    revisions: record.revisions.map(showRevision),
    arms: record.arms.map(showArm),
    placements: record.placements.map(showPlacement),
    setUps: record.setUps.map(showSetUp),
    readings: record.readings.map(showReading),
    sheetReadings: record.sheetReadings.map(showSheetReading),
    partReadings: record.partReadings.map(showPartReading),
    tipMarks: record.tipMarks.map(showTipMark),
    lashLog: record.lashLines.map(showLashLine),
    workings: record.workings.map(showWorking),
    photographs: record.photographs.map((each) => showExportedPhotograph(each, record.build.id)),
    answers: record.answers.map(showAnswer),
    notes: record.notes.map(showNote),
    events: record.events.map(showEvent),
  });
