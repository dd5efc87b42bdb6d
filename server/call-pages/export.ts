import { z } from 'zod';
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
import { partReadingView, showPartReading } from '../assessment/identification/view.ts';
import { lashLineView, showLashLine } from '../assessment/lash/view.ts';
import { sheetReadingView, showSheetReading } from '../assessment/sheet/view.ts';
import { showTipMark, tipMarkView } from '../assessment/tip-marks/view.ts';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { eventsAfter } from '../events/build-events.ts';
import { listAnswers } from '../records/answers/answers.ts';
import { listArms } from '../records/arms/arms.ts';
import { listPlacements } from '../records/arms/placements.ts';
import { getBuild } from '../records/builds/builds.ts';
import { listRevisions } from '../records/builds/revisions.ts';
import { callsOfBuild } from '../records/calls/calls.ts';
import { listLashLines } from '../records/lash-log/lash-log.ts';
import { listNotes } from '../records/notes/notes.ts';
import { listPartReadings } from '../records/part-readings/part-readings.ts';
import { listPhotographs } from '../records/photographs/photographs.ts';
import { photographAddress, photographView, showPhotograph } from '../records/photographs/view.ts';
import { listReadings } from '../records/readings/readings.ts';
import { listSetUps } from '../records/set-ups/set-ups.ts';
import { listSheetReadings } from '../records/sheet/sheet-readings.ts';
import { listTipMarks } from '../records/tip-marks/tip-marks.ts';
import { showWorking, workingView } from '../records/workings/view.ts';
import { listWorkings } from '../records/workings/workings.ts';

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

export async function exportBuild(tx: Tx, principal: Principal, buildId: string, now: Date) {
  const build = await getBuild(tx, principal, buildId);
  const answers = await listAnswers(tx, principal, buildId);
  return {
    format: 'benchcall-build-1',
    exportedAt: now.toISOString(),
    build: showBuild(build),
    calls: (await callsOfBuild(tx, principal, buildId)).map(showCall),
    revisions: (await listRevisions(tx, principal, buildId)).map(showRevision),
    arms: (await listArms(tx, principal, buildId)).map(showArm),
    placements: (await listPlacements(tx, principal, buildId)).map(showPlacement),
    setUps: (await listSetUps(tx, principal, buildId)).map(showSetUp),
    readings: (await listReadings(tx, principal, buildId)).map(showReading),
    sheetReadings: (await listSheetReadings(tx, principal, buildId)).map(showSheetReading),
    partReadings: (await listPartReadings(tx, principal, buildId)).map(showPartReading),
    tipMarks: (await listTipMarks(tx, principal, buildId)).map(showTipMark),
    lashLog: (await listLashLines(tx, principal, buildId)).map(showLashLine),
    workings: (await listWorkings(tx, principal, buildId)).map(showWorking),
    photographs: (await listPhotographs(tx, principal, buildId)).map((each) => ({
      ...showPhotograph(each),
      address: photographAddress(buildId, each.id),
    })),
    answers: answers.map(({ setUpId, found, at, ...rest }) => ({
      ...rest,
      ...(found === undefined ? {} : { found }),
      ...(setUpId === undefined ? {} : { setUpId }),
      at: at.toISOString(),
    })),
    notes: (await listNotes(tx, principal, buildId)).map(showNote),
    events: (await eventsAfter(tx, principal, buildId, 0, 100_000)).map(showEvent),
  };
}
