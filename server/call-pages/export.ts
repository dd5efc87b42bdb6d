import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { eventView, showEvent } from '../assessment/event-view.ts';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { eventsAfter } from '../events/build-events.ts';
import { listAnswers } from '../records/answers/answers.ts';
import { answerView, showAnswer } from '../records/answers/view.ts';
import { listArms } from '../records/arms/arms.ts';
import { listPlacements } from '../records/arms/placements.ts';
import { armView, placementView, showArm, showPlacement } from '../records/arms/view.ts';
import { getBuild } from '../records/builds/builds.ts';
import { listRevisions } from '../records/builds/revisions.ts';
import { buildView, revisionView, showBuild, showRevision } from '../records/builds/view.ts';
import { callsOfBuild } from '../records/calls/calls.ts';
import { callView, showCall } from '../records/calls/view.ts';
import { listLashLines } from '../records/lash-log/lash-log.ts';
import { lashLineView, showLashLine } from '../records/lash-log/view.ts';
import { listNotes } from '../records/notes/notes.ts';
import { noteView, showNote } from '../records/notes/view.ts';
import { listPartReadings } from '../records/part-readings/part-readings.ts';
import { partReadingView, showPartReading } from '../records/part-readings/view.ts';
import { listPhotographs } from '../records/photographs/photographs.ts';
import { exportedPhotographView, showExportedPhotograph } from '../records/photographs/view.ts';
import { listReadings } from '../records/readings/readings.ts';
import { readingView, showReading } from '../records/readings/view.ts';
import { listSetUps } from '../records/set-ups/set-ups.ts';
import { setUpView, showSetUp } from '../records/set-ups/view.ts';
import { listSheetReadings } from '../records/sheet/sheet-readings.ts';
import { sheetReadingView, showSheetReading } from '../records/sheet/view.ts';
import { listTipMarks } from '../records/tip-marks/tip-marks.ts';
import { showTipMark, tipMarkView } from '../records/tip-marks/view.ts';
import { showWorking, workingView } from '../records/workings/view.ts';
import { listWorkings } from '../records/workings/workings.ts';

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

export async function exportBuild(tx: Tx, principal: Principal, buildId: string, now: Date) {
  const build = await getBuild(tx, principal, buildId);
  return answer(exportView, {
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
    photographs: (await listPhotographs(tx, principal, buildId)).map((each) =>
      showExportedPhotograph(each, buildId),
    ),
    answers: (await listAnswers(tx, principal, buildId)).map(showAnswer),
    notes: (await listNotes(tx, principal, buildId)).map(showNote),
    events: (await eventsAfter(tx, principal, buildId, 0, 100_000)).map(showEvent),
  });
}
