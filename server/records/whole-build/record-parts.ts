import type { z } from 'zod';
import type { Sent } from '../../../shared/schemas/answer.ts';
import type { Tx } from '../../database/database.ts';
import type { BuildQuery } from '../../events/rows-of-build.ts';
import { selectAnswers, toAnswer } from '../answers/answers.ts';
import { ANSWER_EVENTS } from '../answers/events.ts';
import { answerView, showAnswer } from '../answers/view.ts';
import { selectArms, toArm } from '../arms/arms.ts';
import { ARM_EVENTS } from '../arms/events.ts';
import { selectPlacements, toPlacement } from '../arms/placements.ts';
import { armView, placementView, showArm, showPlacement } from '../arms/view.ts';
import { BUILD_EVENTS } from '../builds/events.ts';
import { selectRevisions, toRevision } from '../builds/revisions.ts';
import { revisionView, showRevision } from '../builds/view.ts';
import { CALL_EVENTS, TRIAGE_EVENTS } from '../calls/events.ts';
import { CONSEQUENCE_EVENTS } from '../consequences/events.ts';
import { type EntryRow, type EntryTable, entriesOf } from '../corrections/entries.ts';
import { GAP_SCAN_EVENTS } from '../gap-scans/events.ts';
import { GAP_SCANS } from '../gap-scans/gap-scan-table.ts';
import { gapScanView, showGapScan } from '../gap-scans/view.ts';
import { LASH_EVENTS } from '../lash-log/events.ts';
import { NOTE_EVENTS } from '../notes/events.ts';
import { selectNotes, toNote } from '../notes/notes.ts';
import { noteView, showNote } from '../notes/view.ts';
import { PART_READING_EVENTS } from '../part-readings/events.ts';
import { selectHandParts, toHandParts } from '../part-readings/hand-parts.ts';
import { PART_READINGS } from '../part-readings/part-readings.ts';
import { handPartView, partReadingView, showHandPart, showPartReading } from '../part-readings/view.ts';
import { PHOTOGRAPH_EVENTS } from '../photographs/events.ts';
import { selectPhotographs, toPhotograph } from '../photographs/photographs.ts';
import { exportedPhotographView, showExportedPhotograph } from '../photographs/view.ts';
import { READING_EVENTS } from '../readings/events.ts';
import { READINGS } from '../readings/readings.ts';
import { readingView, showReading } from '../readings/view.ts';
import { SET_UP_EVENTS } from '../set-ups/events.ts';
import { selectSetUps, toSetUp } from '../set-ups/set-ups.ts';
import { setUpView, showSetUp } from '../set-ups/view.ts';
import { SHARE_LINK_EVENTS } from '../share-links/events.ts';
import { SHEET_EVENTS } from '../sheet/events.ts';
import { SHEET_READINGS } from '../sheet/sheet-table.ts';
import { sheetReadingView, showSheetReading } from '../sheet/view.ts';
import { TIP_MARK_EVENTS } from '../tip-marks/events.ts';
import { TIP_MARKS } from '../tip-marks/tip-mark-table.ts';
import { showTipMark, tipMarkView } from '../tip-marks/view.ts';
import { WORKING_EVENTS } from '../workings/events.ts';
import { showWorking, workingView } from '../workings/view.ts';
import { WORKINGS } from '../workings/workings.ts';
import type { RecordPart } from './record-part.ts';

/** A list whose rows are items by themselves. */
const rows = <Row, Item, View extends z.ZodType>(
  view: View,
  description: string,
  select: (tx: Tx) => BuildQuery<Row>,
  toItem: (row: Row) => Item,
  show: (item: Item, buildId: string) => Sent<z.output<View>>,
): RecordPart<Row, Item, View> => ({
  view,
  description,
  select,
  items: (found) => found.map(toItem),
  show,
});

/** A list of entries that later ones may have come in the place of. */
const entries = <Row extends EntryRow, Item, View extends z.ZodType>(
  view: View,
  description: string,
  table: Pick<EntryTable<Row, Item>, 'show'> & { query(tx: Tx): BuildQuery<Row> },
  show: (item: Item) => Sent<z.output<View>>,
): RecordPart<Row, Item, View> => ({
  view,
  description,
  select: (tx) => table.query(tx),
  items: (found) => entriesOf(table, found),
  show,
});

/**
 * The lists of a build's record, each once: from here it is read with the build, is a member of BuildRecord, and
 * stands in the export.
 */
export const RECORD_PARTS = {
  revisions: rows(
    revisionView,
    'the build as it stood at each revision, with the reason',
    selectRevisions,
    toRevision,
    showRevision,
  ),
  arms: rows(armView, 'arms with their three marks, word for word', selectArms, toArm, showArm),
  placements: rows(
    placementView,
    'which arm was put on which valve, in order: the swaps',
    selectPlacements,
    toPlacement,
    showPlacement,
  ),
  setUps: rows(setUpView, 'how each set of passes was measured', selectSetUps, toSetUp, showSetUp),
  readings: entries(readingView, 'every pass, replaced and struck ones included', READINGS, showReading),
  sheetReadings: entries(
    sheetReadingView,
    'readings of the per-valve sheet: lifts, lash and gaps',
    SHEET_READINGS,
    showSheetReading,
  ),
  gapScans: entries(
    gapScanView,
    'piston to valve over the crank, replaced and struck scans included',
    GAP_SCANS,
    showGapScan,
  ),
  partReadings: entries(
    partReadingView,
    'sizes, features and marks of the part in the hand',
    PART_READINGS,
    showPartReading,
  ),
  handParts: {
    view: handPartView,
    description: 'parts in the hand by name, with the arm of the build that each is; the first needs no line',
    select: selectHandParts,
    items: toHandParts,
    show: showHandPart,
  },
  tipMarks: entries(tipMarkView, 'tip marks, replaced and struck ones included', TIP_MARKS, showTipMark),
  workings: entries(
    workingView,
    'computations kept with the build, with what went in, struck ones included',
    WORKINGS,
    showWorking,
  ),
  photographs: rows(
    exportedPhotographView,
    'what each shows and proves; the picture is at its address',
    selectPhotographs,
    toPhotograph,
    showExportedPhotograph,
  ),
  answers: rows(
    answerView,
    'what was answered when the readings raised a question',
    selectAnswers,
    toAnswer,
    showAnswer,
  ),
  notes: rows(
    noteView,
    'notes, advice with what it rests on, and promises with owner, date and done',
    selectNotes,
    toNote,
    showNote,
  ),
};

/** Every event that a build's log may hold. */
export const ALL_EVENTS = {
  ...ANSWER_EVENTS,
  ...ARM_EVENTS,
  ...BUILD_EVENTS,
  ...CALL_EVENTS,
  ...CONSEQUENCE_EVENTS,
  ...GAP_SCAN_EVENTS,
  ...LASH_EVENTS,
  ...NOTE_EVENTS,
  ...PART_READING_EVENTS,
  ...PHOTOGRAPH_EVENTS,
  ...READING_EVENTS,
  ...SET_UP_EVENTS,
  ...SHARE_LINK_EVENTS,
  ...SHEET_EVENTS,
  ...TIP_MARK_EVENTS,
  ...TRIAGE_EVENTS,
  ...WORKING_EVENTS,
};

export type EventName = keyof typeof ALL_EVENTS;
