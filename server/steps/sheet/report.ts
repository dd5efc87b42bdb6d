import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { sideOfValve, VALVES } from '../../../shared/schemas/words.ts';
import { SIDES } from '../../../shared/sides.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import { springsOf } from '../../assessment/sheet/of-sheet.ts';
import { answeredText } from '../../call/answered-text.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { questionsOf } from '../../call/question-form.ts';
import {
  besideComponent,
  besideWideComponent,
  filledColumns,
  type ReportSides,
  runComponents,
  saidComponents,
  sectionOf,
  withAsksBehind,
  withoutNote,
  withoutTable,
} from '../../call/report-parts.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { subjectSaid } from '../../mechanics/assessment/common/said.ts';
import type { Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { ofArm, ofPlace } from '../../mechanics/assessment/sheet/swaps/swap-said.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { perValveDrawings } from './bars.ts';
import { liftsTable } from './lifts-table.ts';
import { signed } from './sheet-tables.ts';
import { ON_SPRING } from './sheet-text.ts';
import { rawReadings } from './takeover.ts';

/** What no longer stands on the sheet, with the reason: it stays on record. */
function struckOnes({ record: { sheetReadings } }: CallContext): string[] {
  return sheetReadings.flatMap((old) => {
    const later = sheetReadings.find(({ id }) => id === old.replacedBy);
    if (later === undefined) return [];
    const what = `${SHEET_KINDS[old.kind]} ${valveName(old)}: ${asEntered(old.reading.readAs)}`;
    return [
      later.struck
        ? `${what}, struck out by ${later.by}: ${later.reason}`
        : `${what}, now ${asEntered(later.reading.readAs)} by ${later.by}: ${later.reason}`,
    ];
  });
}

/** Intakes and exhausts beside one another; where there is one kind alone, its drawing stands beside it. */
function liftsComponents(context: CallContext, sheet: SheetDetail, spring: Spring): Component[] {
  // An empty row says nothing on paper, and a gap is told with what the ratio does.
  const rows = sheet.rows.filter(({ cells }) => cells.some(({ kind }) => kind.endsWith('lift')));
  const read = SIDES.map((side) => ({
    side,
    own: rows.filter(({ valve }) => sideOfValve(valve) === side),
  })).filter(({ own }) => own.length > 0);
  const tables = read.map(({ side, own }, index) => {
    const caption = `${VALVES[side]} valves, ${ON_SPRING[spring]}, inches`;
    const table = filledColumns(withAsksBehind({ ...liftsTable(context, own, spring), caption }));
    // The note is about both tables: it stands below the first alone.
    return tableComponent(index > 0 ? withoutNote(table) : table);
  });
  if (tables.length === 0) return [];
  if (tables.length > 1) return [besideComponent(...tables)];
  const drawings = perValveDrawings(rows, sheet.sides, spring).map(withoutTable).map(drawingComponent);
  return [besideWideComponent(...tables, ...drawings.slice(0, 1))];
}

/** What the odd valves still need; their sentences stand at the head of the sheet. */
function neededFor({ assessment }: CallContext): string[] {
  return assessment.judgements
    .filter(({ against, lacks }) => against.to === 'siblings' && lacks.length > 0)
    .flatMap(({ about, lacks }) =>
      about.of === 'valve' ? [`${valveName(about)}: ${lacks.join('; ')}`] : [],
    );
}

/** Questions with the valve or the side that they are about, each with what settles it or what was answered. */
const askedOf = (questions: readonly AssessedQuestion[]): string[] =>
  questions.map((question) => {
    const { about, ask, test, answered } = question;
    const last = answered === undefined ? test : `Answered: ${answeredText(question)}.`;
    return `${subjectSaid(about)}: ${ask} ${last}`;
  });

/** Every reading as it was read, also where a row has several of one kind. */
const asReadFacts = ({ record }: CallContext): Fact[] =>
  rawReadings(stillStanding(record.sheetReadings)).map(({ label = '', text }) => ({
    label: label.replace(/:$/, ''),
    value: text,
  }));

/** The figures behind what the swaps decide; their sentences stand at the head of the sheet. */
const swapFacts = ({ swaps }: SheetDetail): Fact[] =>
  swaps.flatMap((swap) =>
    swap.part === undefined || swap.position === undefined
      ? []
      : [
          {
            label: `${swap.places.join(' and ')}, ${ON_SPRING[swap.spring]}`,
            value: `${signed(ofArm(swap))} goes with the arm, ${signed(ofPlace(swap))} stays on the valve`,
          },
        ],
  );

/** Every valve that was read, what its row is asked, and what the swaps decide. */
export function sheetReport(context: CallContext): ReportSides {
  const { sheet } = context.assessment.details;
  // What a short gap asks is said by its stop, at the head of the sheet.
  const all = questionsOf(context, 'sheet');
  const open = all.filter(({ code, answered }) => code !== 'gap-short' && answered?.found !== false);
  const answered = all.filter((each) => each.answered !== undefined && !open.includes(each));
  return {
    components: sectionOf('Every valve', [
      ...saidComponents('Still needed', neededFor(context)),
      ...runComponents('Swap tests', swapFacts(sheet)),
      ...springsOf(sheet).flatMap((spring) => liftsComponents(context, sheet, spring)),
    ]),
    back: sectionOf('Every valve: what was asked, and as read', [
      ...saidComponents('Asked of these figures', askedOf(open)),
      ...saidComponents('Asked and answered', askedOf(answered)),
      ...runComponents('Every reading, as read', asReadFacts(context)),
      ...saidComponents('Struck out or replaced on the sheet', struckOnes(context)),
    ]),
  };
}
