import { isHydraulicLifter } from '../../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import { asked } from '../../common/asked.ts';
import { lashMakesIt } from '../../common/lash-makes-it.ts';
import { inches, placeOf, valveSubject } from '../../common/said.ts';
import { usableLash } from '../../common/usable-lash.ts';
import type { Evidence } from '../../evidence.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { middleOfSiblings } from '../rows/siblings-middle.ts';

/** As many others as this have a middle; as many off alike are no lash of one valve. */
const FEWEST = 2;

/** The word of the question, by which what is next finds it. */
export const LASH_OF_ONE = 'lash-left-in';

const isFirm = ({ engine }: Evidence, { readings }: LiftLot): boolean =>
  !isHydraulicLifter(engine.lifter) &&
  readings.every(({ lifter }) => lifter !== 'hydraulic' && lifter !== 'locked');

/** By how much a valve lifts less than its siblings, less what its own lobe takes off [m]. */
function shortBy(
  { card }: Evidence,
  row: SheetRow,
  lot: LiftLot,
  rows: readonly SheetRow[],
): number | undefined {
  const others = rows.filter((each) => each !== row && sideOfValve(each.valve) === sideOfValve(row.valve));
  const lobes = others.flatMap(({ lobe }) => lobe?.value ?? []);
  const lift = middleOfSiblings(rows, row, lot.spring, 'lifts');
  const lobe = lobes.length < FEWEST ? card[sideOfValve(row.valve)].lobeLift : medianKnown(lobes);
  if (lot.figure.value === undefined || lift === undefined) return undefined;
  const ofLobe =
    lobe === undefined || lobe <= 0 || row.lobe?.value === undefined
      ? 0
      : ((lobe - row.lobe.value) * lift) / lobe;
  return lift - lot.figure.value - ofLobe;
}

/** Short of the others; with what its own lobe takes off beside it, where that is as much as is told. */
function shortSaid(row: SheetRow, lot: LiftLot, rows: readonly SheetRow[], short: number): string {
  const lift = middleOfSiblings(rows, row, lot.spring, 'lifts') ?? 0;
  const whole = lift - (lot.figure.value ?? lift);
  return inches(whole) === inches(short)
    ? `It is ${inches(short)} short of the others.`
    : `It is ${inches(whole)} short of the others, ${inches(short)} without what its own lobe makes of that.`;
}

function ofRow(evidence: Evidence, row: SheetRow, rows: readonly SheetRow[]): AssessedQuestion[] {
  const known = [usableLash(evidence, row)?.gap.value, evidence.card[sideOfValve(row.valve)].lash];
  const open = row.lifts.filter(({ lash }) => lash !== 'zero');
  return open.flatMap((lot) => {
    const short = shortBy(evidence, row, lot, rows);
    if (short === undefined || short <= allowance('odd-beyond') || !isFirm(evidence, lot)) return [];
    const lash = known.find((each) => each !== undefined && each > 0 && lashMakesIt(short, each));
    if (lash === undefined) return [];
    return [
      asked(
        {
          code: LASH_OF_ONE,
          weight: 'weak',
          ask: `Could the lash of ${inches(lash)} be left in the lift of ${placeOf(row)}?`,
          knownBy: 'could the lash be left in the lift',
          size: shortSaid(row, lot, rows, short),
          test: 'ask whether the lash was out when it was read; if nobody is sure, take it up to zero and read it again',
          restsOn: lot.readings.map(({ id }) => id),
        },
        {
          about: valveSubject(row),
          step: 'sheet',
          among: lot.spring,
          answers: evidence.answers,
          choices: answersOf(LASH_OF_ONE),
        },
      ),
    ];
  });
}

/** By how much each lift of a valve is short of its siblings, past what siblings differ by [m]. */
const shortsOf = (evidence: Evidence, row: SheetRow, rows: readonly SheetRow[]): number[] =>
  row.lifts.flatMap((lot) => {
    const short = shortBy(evidence, row, lot, rows) ?? 0;
    return short > allowance('odd-beyond') ? [short] : [];
  });

/** The most valves of a side that are short alike with one that is asked: one that is short by far more is another matter. */
function mostAlike(evidence: Evidence, rows: readonly SheetRow[], asked: readonly SheetRow[]): number {
  const isLike = (short: number) => (other: number) => Math.abs(other - short) <= allowance('odd-beyond');
  const shorts = rows.map((row) => shortsOf(evidence, row, rows));
  const like = (short: number) => shorts.filter((own) => own.some(isLike(short))).length;
  return Math.max(0, ...asked.flatMap((row) => shortsOf(evidence, row, rows)).map(like));
}

/** One valve, or two, low by just their lash: that is asked before their rockers are. Of more it is asked of all at once. */
export function lashOfOne(evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] {
  return (['intake', 'exhaust'] as const).flatMap((side) => {
    const own = rows.filter(({ valve }) => sideOfValve(valve) === side);
    const found = own.map((row) => ({ row, questions: ofRow(evidence, row, own) }));
    const asked = found.filter(({ questions }) => questions.length > 0).map(({ row }) => row);
    const questions = found.flatMap((each) => each.questions);
    return mostAlike(evidence, own, asked) > FEWEST
      ? questions.filter(({ answered }) => answered !== undefined)
      : questions;
  });
}

/** Valves that are asked it and not answered yet: their lash comes before their rockers. */
export const lashAskedOf = (raised: readonly AssessedQuestion[]): ReadonlySet<string> =>
  new Set(
    raised.flatMap(({ code, about, answered }) =>
      code === LASH_OF_ONE && about.of === 'valve' && answered === undefined ? [placeOf(about)] : [],
    ),
  );
