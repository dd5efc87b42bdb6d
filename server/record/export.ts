import { z } from 'zod';
import type { Caller } from '../access/caller.ts';
import { listAnswers } from '../answers/answers.ts';
import {
  armView,
  buildView,
  eventView,
  noteView,
  placementView,
  readingView,
  revisionView,
  setUpView,
  showArm,
  showBuild,
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
import type { Tx } from '../database/database.ts';
import { listPartReadings } from '../identification/part-readings.ts';
import { partReadingView, showPartReading } from '../identification/views.ts';
import { listNotes } from '../notes/notes.ts';
import { listReadings } from '../readings/readings.ts';
import { listSetUps } from '../set-ups/set-ups.ts';
import { listSheetReadings } from '../sheet/sheet-readings.ts';
import { sheetReadingView, showSheetReading } from '../sheet/view.ts';
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

/** A build with all that was ever entered, as one document. */
export const exportView = z
  .object({
    format: z.literal('benchcall-build-1'),
    exportedAt: z.iso.datetime(),
    build: buildView,
    revisions: z.array(revisionView),
    arms: z.array(armView),
    placements: z.array(placementView),
    setUps: z.array(setUpView),
    readings: z.array(readingView),
    sheetReadings: z.array(sheetReadingView),
    partReadings: z.array(partReadingView),
    answers: z.array(answerView),
    notes: z.array(noteView),
    events: z.array(eventView),
  })
  .meta({ id: 'BuildExport' });

export async function exportBuild(tx: Tx, caller: Caller, buildId: string, now: Date) {
  const build = await getBuild(tx, caller, buildId);
  const answers = await listAnswers(tx, caller, buildId);
  return {
    format: 'benchcall-build-1',
    exportedAt: now.toISOString(),
    build: showBuild(build),
    revisions: (await listRevisions(tx, caller, buildId)).map(showRevision),
    arms: (await listArms(tx, caller, buildId)).map(showArm),
    placements: (await listPlacements(tx, caller, buildId)).map(showPlacement),
    setUps: (await listSetUps(tx, caller, buildId)).map(showSetUp),
    readings: (await listReadings(tx, caller, buildId)).map(showReading),
    sheetReadings: (await listSheetReadings(tx, caller, buildId)).map(showSheetReading),
    partReadings: (await listPartReadings(tx, caller, buildId)).map(showPartReading),
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
