import { asEntered } from '../../../../../shared/quantities/as-entered.ts';
import { allowance } from '../../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { chosenOf } from '../../common/chosen.ts';
import { figureOf } from '../../common/lot.ts';
import { listed, placeOf, upperFirst, valveSubject } from '../../common/said.ts';
import { isSince } from '../../common/since.ts';
import type { Evidence, SheetEvidence } from '../../evidence.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import { setUpsSaid } from '../../ratio/compared/which-holds.ts';
import { perTurnOf } from '../../ratio/read/dial.ts';
import { answerLack, type RatioLack } from '../../ratio/read/lack.ts';
import { meanOf } from '../../ratio/read/passes.ts';
import { type ArmLot, armLots } from '../rows/lots-of-swaps.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';

/** A lift of the sheet and the same valve read in set-ups, in one way and with one arm. */
interface Beside {
  readonly row: SheetRow;
  readonly lot: LiftLot;
  readonly ofLot: ArmLot;
  /** Those that came out otherwise than the sheet, and those that came to the same. */
  readonly others: readonly SetUpKnown[];
  readonly agreeing: readonly SetUpKnown[];
}

type Holds = 'sheet' | 'set-ups';

/** One of the two, once it is known which holds; else what is asked. */
interface Decided extends Beside {
  readonly question: AssessedQuestion;
  readonly holds?: Holds;
}

/** What the sheet has, what set-ups have, and what is asked where they do not go together. */
export interface SheetAndSetUps {
  readonly rows: readonly SheetRow[];
  readonly known: readonly SetUpKnown[];
  readonly questions: readonly AssessedQuestion[];
}

const SHEET = 'the per-valve sheet';

/** As many passes as are asked for after base, lifter and lash were looked at. */
const ENOUGH_SINCE = 3;

const within = (a: number, b: number): boolean => Math.abs(a - b) <= allowance('odd-beyond');

const figuresSaid = (readings: readonly { readonly readAs: string }[]): string =>
  listed([...new Set(readings.map(({ readAs }) => asEntered(readAs)))].sort());

const readIn = ({ read }: SetUpKnown, lot: ArmLot): boolean =>
  read.valve.used.some(({ id }) => lot.restsOn.includes(id));

const isSameWay = (lot: ArmLot, other: ArmLot): boolean =>
  placeOf(other) === placeOf(lot) &&
  other.method === lot.method &&
  other.soldAsThen === lot.soldAsThen &&
  other.comesOff === lot.comesOff &&
  (other.armId === undefined || lot.armId === undefined || other.armId === lot.armId);

/** The lots of set-ups that read the same thing as this lot of the sheet. */
const setUpLotsOf = (lot: ArmLot, ofSetUps: readonly ArmLot[]): ArmLot[] =>
  ofSetUps.filter((other) => other.value !== undefined && isSameWay(lot, other));

const alikeAll = (lots: readonly ArmLot[]): boolean =>
  lots.every((one) => lots.every((other) => within(one.value ?? 0, other.value ?? 0)));

/** Of readings that do not go together those that a set-up comes to: the others were misread. */
function bySetUps(evidence: Evidence, lot: LiftLot, ofSetUps: readonly ArmLot[]): LiftLot {
  const [one] = ofSetUps;
  if (lot.figure.undecided !== true || one?.value === undefined || !alikeAll(ofSetUps)) return lot;
  const { value } = one;
  const fits = ({ reading }: SheetEvidence) => reading.value !== undefined && within(reading.value, value);
  const kept = lot.readings.filter(fits);
  const left = lot.readings.filter((each) => !fits(each));
  if (kept.length === 0 || left.length === 0) return lot;
  return {
    ...lot,
    figure: figureOf(kept, perTurnOf(evidence, kept)),
    leftOut: left.map(({ id }) => id),
  };
}

function besideOf(row: SheetRow, lots: readonly ArmLot[], known: readonly SetUpKnown[]): Beside[] {
  const ofSetUps = lots.filter((lot) => known.some((each) => readIn(each, lot)));
  return row.lifts.flatMap((lot): Beside[] => {
    const ofLot = lots.find((each) => lot.readings.some(({ id }) => each.restsOn.includes(id)));
    if (ofLot?.value === undefined) return [];
    const { value } = ofLot;
    const here = setUpLotsOf(ofLot, ofSetUps);
    const knownOf = (own: readonly ArmLot[]) => known.filter((each) => own.some((one) => readIn(each, one)));
    const others = knownOf(here.filter((other) => !within(other.value ?? 0, value)));
    const agreeing = knownOf(here.filter((other) => within(other.value ?? 0, value)));
    return others.length === 0 ? [] : [{ row, lot, ofLot, others, agreeing }];
  });
}

function choicesOf({ lot, others }: Beside): AnswerChoice[] {
  const setUps = setUpsSaid(others);
  const hold = others.length > 1 ? 'hold' : 'holds';
  const lifts = figuresSaid(others.flatMap(({ read }) => read.valve.used));
  return [
    {
      code: 'sheet',
      label: `The sheet’s holds, ${figuresSaid(lot.readings)}`,
      changes: `It is compared and calculated with; ${setUps} stays on record, and no word stands on it.`,
    },
    {
      code: 'set-up',
      label: `${upperFirst(setUps)} ${hold}, ${lifts}`,
      changes:
        'It is told, compared and calculated with; what the sheet has stays on record and is left out.',
    },
    {
      code: 'again',
      label: 'Another reading is wanted',
      changes: 'Nothing rests on either until then; the one that the third reading comes to holds.',
      holds: true,
    },
    {
      code: 'both',
      label: 'Now the one comes up, now the other',
      changes:
        'Both stay, and no word stands: base, lifter or lash moves between them, and is looked at first.',
      holds: true,
    },
  ];
}

function questionOf(evidence: Evidence, beside: Beside): AssessedQuestion {
  const { row, lot, others } = beside;
  const inThem = others.map(({ read }) => `${figuresSaid(read.valve.used)} in set-up ${read.setUp.number}`);
  return asked(
    {
      code: 'read-otherwise',
      weight: 'strong',
      ask: `The valve lift of ${placeOf(row)} was read ${figuresSaid(lot.readings)} on the sheet and ${listed(inThem)}. Which of the two holds?`,
      knownBy: 'which of the readings of the valve lift was misread',
      test: 'read it once more, the same way: the one that it comes to holds',
      alsoOf: ['ratio', 'consequences'],
      restsOn: [...lot.readings, ...others.flatMap(({ read }) => read.valve.used)].map(({ id }) => id),
    },
    {
      about: valveSubject(row),
      step: 'sheet',
      among: `${lot.spring}-set-up`,
      answers: evidence.answers,
      choices: choicesOf(beside),
    },
  );
}

/** Readings of the sheet that were taken because the answer was to read it once more. */
function sheetSince(evidence: Evidence, { lot }: Beside, { answered }: AssessedQuestion): number {
  const answer = evidence.answers.find(({ id }) => id === answered?.entryId);
  return answer === undefined ? 0 : lot.readings.filter((each) => isSince(each, answer)).length;
}

/** What a third reading, of either kind, comes to; each set-up is one reading, and a sheet was read once. */
function byCount(beside: Beside, again: number): Holds | undefined {
  const { others, agreeing } = beside;
  const ofSheet = 1 + agreeing.length + again;
  if (ofSheet > others.length && ofSheet > 1) return 'sheet';
  const lifts = others.flatMap(({ read }) => read.valve.used.map(({ value }) => value));
  const alike = within(Math.min(...lifts), Math.max(...lifts));
  return alike && others.length > ofSheet ? 'set-ups' : undefined;
}

/** What was read since, on the sheet and in set-ups: each pass is one reading. */
const liftsSince = (evidence: Evidence, { lot, others, agreeing }: Beside, question: AssessedQuestion) => {
  const answer = evidence.answers.find(({ id }) => id === question.answered?.entryId);
  if (answer === undefined) return [];
  const ofSheet = lot.readings.flatMap((each) =>
    isSince(each, answer) && each.reading.value !== undefined ? [each.reading.value] : [],
  );
  const passes = [...others, ...agreeing].flatMap(({ read }) => read.valve.used);
  return [...ofSheet, ...passes.filter((each) => isSince(each, answer)).map(({ value }) => value)];
};

/** What came up now so, now so, comes up three times alike: one reading more is only one of them again. */
function steadied(
  evidence: Evidence,
  beside: Beside,
  question: AssessedQuestion,
): Holds | undefined | 'moves' {
  const since = liftsSince(evidence, beside, question);
  if (since.length < ENOUGH_SINCE || !within(Math.min(...since), Math.max(...since))) return 'moves';
  const [value = 0] = since;
  if (within(value, beside.ofLot.value ?? 0)) return 'sheet';
  return beside.others.every(({ read }) => within(meanOf(read.valve.used), value)) ? 'set-ups' : undefined;
}

const LOOK_FIRST = 'Look at base, lifter and lash first; then read it again both ways.';

function decided(evidence: Evidence, beside: Beside): Decided {
  const question = questionOf(evidence, beside);
  const settled: AssessedQuestion = { ...question, weight: 'weak' };
  switch (chosenOf(question)) {
    case 'sheet':
      return { ...beside, question: settled, holds: 'sheet' };
    case 'set-up':
      return { ...beside, question: settled, holds: 'set-ups' };
    case 'both': {
      const holds = steadied(evidence, beside, question);
      if (holds === 'moves') return { ...beside, question: { ...question, test: LOOK_FIRST } };
      return holds === undefined ? { ...beside, question } : { ...beside, question: settled, holds };
    }
    default: {
      const holds = byCount(beside, sheetSince(evidence, beside, question));
      return holds === undefined ? { ...beside, question } : { ...beside, question: settled, holds };
    }
  }
}

/** The lift as it was when it was said to come up now so, now so: what was read since waits until three are alike. */
function asItWas(
  evidence: Evidence,
  row: SheetRow,
  lot: LiftLot,
  ofLot: ArmLot,
  others: readonly SetUpKnown[],
): LiftLot | undefined {
  const beside: Beside = { row, lot, ofLot, others, agreeing: [] };
  const question = questionOf(evidence, beside);
  if (chosenOf(question) !== 'both' || steadied(evidence, beside, question) !== 'moves') return undefined;
  const answer = evidence.answers.find(({ id }) => id === question.answered?.entryId);
  const then = lot.readings.filter((each) => answer !== undefined && !isSince(each, answer));
  if (then.length === 0 || then.length === lot.readings.length) return undefined;
  return {
    ...lot,
    figure: figureOf(then, perTurnOf(evidence, then)),
    leftOut: lot.readings.filter((each) => !then.includes(each)).map(({ id }) => id),
  };
}

/** What a set-up lacks while the sheet has it otherwise, or since the sheet's holds. */
function lackOf({ question, holds, others }: Decided): RatioLack[] {
  if (holds === 'set-ups') return [];
  if (holds === 'sheet') return [{ code: 'same-as', setUps: SHEET }];
  const both = `${setUpsSaid(others)} and ${SHEET}`;
  const chosen = chosenOf(question);
  if (chosen === 'both') return [{ code: 'what-moves', setUps: both }];
  return [
    chosen === 'again'
      ? { code: 'same-as', setUps: `${setUpsSaid(others)} or ${SHEET}` }
      : answerLack(question),
  ];
}

/** What the sheet has, left out where the set-up's holds: it stays in its cell, and in no figure. */
function asideOf(lot: LiftLot, { others }: Decided): LiftLot {
  const holds = `${setUpsSaid(others)} ${others.length > 1 ? 'hold' : 'holds'} instead`;
  return {
    ...lot,
    figure: { passes: lot.readings.length, apart: [], lacks: [holds] },
    leftOut: lot.readings.map(({ id }) => id),
    aside: true,
  };
}

/**
 * Lifts of the sheet beside those of set-ups, of one valve with one arm and read in one way. Where they do not go
 * together a person says which holds, or a third reading does; nothing rests on either before that, and what was put
 * aside stays on record.
 */
export function sheetAndSetUps(
  evidence: Evidence,
  entered: readonly SheetRow[],
  known: readonly SetUpKnown[],
): SheetAndSetUps {
  if (known.length === 0 || entered.length === 0) return { rows: entered, known, questions: [] };
  const lotsBefore = armLots(evidence, entered, known, new Set());
  const ofSetUps = lotsBefore.filter((lot) => known.some((each) => readIn(each, lot)));
  const each = (row: SheetRow, put: (lot: LiftLot) => LiftLot): SheetRow => ({
    ...row,
    lifts: row.lifts.map(put),
    everyLift: row.everyLift.map(put),
  });
  const rows = entered.map((row) =>
    each(row, (lot) => {
      const own = lotsBefore.find(({ restsOn }) => lot.readings.some(({ id }) => restsOn.includes(id)));
      if (own === undefined) return lot;
      const here = setUpLotsOf(own, ofSetUps);
      const readHere = known.filter((one) => here.some((other) => readIn(one, other)));
      return asItWas(evidence, row, lot, own, readHere) ?? bySetUps(evidence, lot, here);
    }),
  );
  const lots = armLots(evidence, rows, known, new Set());
  const all = rows.flatMap((row) => besideOf(row, lots, known)).map((beside) => decided(evidence, beside));
  const isOf = (one: LiftLot, { lot }: Decided) =>
    lot.readings.some(({ id }) => one.readings.some((own) => own.id === id));
  return {
    questions: all.map(({ question }) => question),
    rows: rows.map((row) =>
      each(row, (lot) => {
        const own = all.find((one) => one.holds === 'set-ups' && isOf(lot, one));
        return own === undefined ? lot : asideOf(lot, own);
      }),
    ),
    known: known.map((one) => {
      const own = all.filter(({ others }) => others.includes(one));
      if (own.length === 0) return one;
      const lacks = [...one.lacks, ...own.flatMap(lackOf)];
      if (own.some(({ holds }) => holds === 'sheet')) return { ...one, lacks, besideSheet: 'aside' as const };
      const open = own.filter(({ holds }) => holds === undefined);
      if (open.length === 0) return { ...one, lacks };
      const higher = open.every(({ ofLot }) => meanOf(one.read.valve.used) >= (ofLot.value ?? 0));
      return { ...one, lacks, besideSheet: higher ? ('higher' as const) : ('lower' as const) };
    }),
  };
}
