import { z } from 'zod';
import type { Caller } from '../access/caller.ts';
import { listAnswers } from '../answers/answers.ts';
import {
  armView,
  buildView,
  callView,
  eventView,
  noteView,
  placementView,
  readingView,
  revisionView,
  setUpView,
  showArm,
  showBuild,
  showCall,
  showEvent,
  showNote,
  showPlacement,
  showReading,
  showRevision,
  showSetUp,
} from '../api/views.ts';
import { listArms } from '../builds/arms.ts';
import { getBuild } from '../builds/builds.ts';
import { listPlacements } from '../builds/placements.ts';
import { listRevisions } from '../builds/revisions.ts';
import { callsOfBuild } from '../calls/calls.ts';
import type { Tx } from '../database/database.ts';
import { listPartReadings } from '../identification/part-readings.ts';
import { partReadingView, showPartReading } from '../identification/views.ts';
import { listLashLines } from '../lash-log/lash-log.ts';
import { lashLineView, showLashLine } from '../lash-log/view.ts';
import { listNotes } from '../notes/notes.ts';
import { listPhotographs } from '../photographs/photographs.ts';
import { photographAddress, photographView, showPhotograph } from '../photographs/view.ts';
import { listReadings } from '../readings/readings.ts';
import { listSetUps } from '../set-ups/set-ups.ts';
import { listSheetReadings } from '../sheet/sheet-readings.ts';
import { sheetReadingView, showSheetReading } from '../sheet/view.ts';
import { listTipMarks } from '../tip-marks/tip-marks.ts';
import { showTipMark, tipMarkView } from '../tip-marks/view.ts';
import { showWorking, workingView } from '../workings/view.ts';
import { listWorkings } from '../workings/workings.ts';
import { eventsAfter } from './events.ts';

const answerView = z.object({
  id: z.uuid(),
  question: z.string(),
  answer: z.string(),
  code: z.string(),
  found: z.boolean().optional(),
  setUpId: z.uuid().optional(),
  seq: z.int(),
  by: z.string(),
  at: z.iso.datetime(),
});

const exportedPhotograph = photographView
  .extend({ address: z.string().meta({ description: 'where this API gives the picture as JPEG' }) })
  .meta({ id: 'ExportedPhotograph' });

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
    photographs: told(exportedPhotograph, 'what each shows and proves; the picture is at its address'),
    answers: told(answerView, 'what was answered when the readings raised a question'),
    notes: told(noteView, 'notes, advice with what it rests on, and promises with owner, date and done'),
    events: told(eventView, 'the record line by line, the figures kept of a ratio’s consequences among it'),
  })
  .meta({ id: 'BuildExport' });

export async function exportBuild(tx: Tx, caller: Caller, buildId: string, now: Date) {
  const build = await getBuild(tx, caller, buildId);
  const answers = await listAnswers(tx, caller, buildId);
  return {
    format: 'benchcall-build-1',
    exportedAt: now.toISOString(),
    build: showBuild(build),
    calls: (await callsOfBuild(tx, caller, buildId)).map(showCall),
    revisions: (await listRevisions(tx, caller, buildId)).map(showRevision),
    arms: (await listArms(tx, caller, buildId)).map(showArm),
    placements: (await listPlacements(tx, caller, buildId)).map(showPlacement),
    setUps: (await listSetUps(tx, caller, buildId)).map(showSetUp),
    readings: (await listReadings(tx, caller, buildId)).map(showReading),
    sheetReadings: (await listSheetReadings(tx, caller, buildId)).map(showSheetReading),
    partReadings: (await listPartReadings(tx, caller, buildId)).map(showPartReading),
    tipMarks: (await listTipMarks(tx, caller, buildId)).map(showTipMark),
    lashLog: (await listLashLines(tx, caller, buildId)).map(showLashLine),
    workings: (await listWorkings(tx, caller, buildId)).map(showWorking),
    photographs: (await listPhotographs(tx, caller, buildId)).map((each) => ({
      ...showPhotograph(each),
      address: photographAddress(buildId, each.id),
    })),
    answers: answers.map(({ setUpId, found, at, ...rest }) => ({
      ...rest,
      ...(found === undefined ? {} : { found }),
      ...(setUpId === undefined ? {} : { setUpId }),
      at: at.toISOString(),
    })),
    notes: (await listNotes(tx, caller, buildId)).map(showNote),
    events: (await eventsAfter(tx, caller, buildId, 0, 100_000)).map(showEvent),
  };
}
