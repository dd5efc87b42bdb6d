import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../../shared/sides.ts';
import { allowance } from '../../../kit/allowances.ts';
import { IN } from '../../../kit/si.ts';
import { chanceOfSoMany, divisionOf, sameDivisionChance } from '../../../valve-sheet/honest-repeats.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import { asked } from '../../common/asked.ts';
import { inches } from '../../common/said.ts';
import type { Evidence, SheetEvidence, Side } from '../../evidence.ts';
import { claimOfRow } from '../rows/claim-of-row.ts';
import { type Column, columnsOf } from '../rows/columns.ts';
import { liftOf } from '../rows/equal-readings.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { ASKED, LIFTS, LOBES, STRONG } from './copied.ts';

/** Fewer than this that are equal are no column. */
const FEWEST = 3;
const EQUAL = 1e-9 * IN;

interface Pair {
  readonly one: number;
  readonly other: number;
  readonly restsOn: readonly string[];
}

/** How likely so many pairs are equal by chance, where that is unlikely enough to be asked. */
function unlikely(pairs: readonly Pair[]): { readonly alike: number; readonly chance: number } | undefined {
  const alike = pairs.filter(({ one, other }) => Math.abs(one - other) <= EQUAL).length;
  if (alike < FEWEST) return undefined;
  const division = divisionOf(pairs.flatMap(({ one, other }) => [one, other]));
  const chance = chanceOfSoMany(pairs.length, alike, sameDivisionChance(division, LIFTS));
  return chance < ASKED ? { alike, chance } : undefined;
}

const lotOf = ({ lifts }: SheetRow, spring: string): LiftLot | undefined =>
  lifts.find((lot) => lot.spring === spring && (lot.figure.value ?? 0) > 0);

const springsOf = (rows: readonly SheetRow[]): string[] =>
  [...new Set(rows.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)))].sort();

const idsOf = (lot: LiftLot): string[] => lot.readings.map(({ id }) => id);

/** How far a side's lifts are from what its lobes and its arms make of them, as a share; nothing where one is not known. */
function offOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  side: Side,
  spring: string,
): number | undefined {
  const shares = rows
    .filter(({ valve }) => sideOfValve(valve) === side)
    .flatMap((row) => {
      const lobe = row.lobe?.value ?? evidence.card[side].lobeLift;
      const ratio = claimOfRow(evidence, row, spring)?.ratio ?? evidence.card.assumedRatio;
      const lift = lotOf(row, spring)?.figure.value;
      return lobe === undefined || lobe <= 0 || ratio === undefined || lift === undefined
        ? []
        : [Math.abs(lift / lobe / ratio - 1)];
    });
  return medianKnown(shares);
}

/** The lifts of one side entered for the other too: asked of the side that they do not fit, of both where nothing tells. */
function acrossSides(evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] {
  return springsOf(rows).flatMap((spring) => {
    const pairs = rows.flatMap((row) => {
      const beside = rows.find((each) => each.cylinder === row.cylinder && each.valve === 'exhaust');
      const [one, other] = [lotOf(row, spring), beside === undefined ? undefined : lotOf(beside, spring)];
      if (row.valve !== 'intake' || one === undefined || other === undefined) return [];
      return [{ one, other }];
    });
    const found = unlikely(
      pairs.map(({ one, other }) => ({
        one: one.figure.value ?? 0,
        other: other.figure.value ?? 0,
        restsOn: [],
      })),
    );
    if (found === undefined) return [];
    const [ofIntakes, ofExhausts] = SIDES.map((side) => offOf(evidence, rows, side, spring));
    const copy =
      ofIntakes === undefined || ofExhausts === undefined || ofIntakes === ofExhausts
        ? SIDES
        : [ofIntakes > ofExhausts ? ('intake' as const) : ('exhaust' as const)];
    return copy.map((side) =>
      asked(
        {
          code: 'copied-reading',
          weight: found.chance < STRONG ? 'strong' : 'weak',
          ask: `Were the ${side} valves read, or is that the ${side === 'intake' ? 'exhaust' : 'intake'} column entered twice?`,
          size: `${found.alike} of ${pairs.length} valve lifts are those of the other valve of their cylinder, to the last digit.`,
          test: `Touch one of the ${side} valves while its lobe lifts it, read it again, and enter the column that was meant.`,
          restsOn: pairs.flatMap(({ one, other }) => idsOf(side === 'intake' ? one : other)),
        },
        {
          about: { of: 'side', valve: side },
          step: 'sheet',
          among: `valve-lift-${spring}-sides`,
          answers: evidence.answers,
          choices: answersOf('copied-reading'),
        },
      ),
    );
  });
}

/** One column entered as lobe lift and as valve lift; a bucket lifts its valve by what the lobe lifts. */
function lobesAsLifts(evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] {
  if (evidence.engine.gear === 'bucket') return [];
  return SIDES.flatMap((side) =>
    springsOf(rows).flatMap((spring) => {
      const own = rows.filter(({ valve }) => sideOfValve(valve) === side);
      const pairs = own.flatMap((row): Pair[] => {
        const lot = lotOf(row, spring);
        const [one, other] = [row.lobe?.value, lot?.figure.value];
        return one === undefined || other === undefined || lot === undefined
          ? []
          : [{ one, other, restsOn: idsOf(lot) }];
      });
      const found = unlikely(pairs);
      const card = evidence.card[side].lobeLift;
      const lobe = medianKnown(pairs.map(({ one }) => one));
      // Where it is the lobes that do not fit, they are asked whether they are valve lifts.
      const isLobe =
        card === undefined || (lobe !== undefined && Math.abs(lobe - card) <= 2 * allowance('card-lobe'));
      if (found === undefined || !isLobe) return [];
      return [
        asked(
          {
            code: 'copied-reading',
            weight: found.chance < STRONG ? 'strong' : 'weak',
            ask: `Were the ${side} valve lifts read, or are they the lobe lifts entered twice?`,
            size: `${found.alike} of ${pairs.length} valve lifts are those of their lobes, to the last digit.`,
            test: 'Look at the sheet they came from, and enter the column that was meant; else read one of those valves again at the retainer.',
            restsOn: pairs.flatMap(({ restsOn }) => restsOn),
          },
          {
            about: { of: 'side', valve: side },
            step: 'sheet',
            among: `valve-lift-${spring}-lobes`,
            answers: evidence.answers,
            choices: answersOf('copied-reading'),
          },
        ),
      ];
    }),
  );
}

/** What is printed on the card of that lift. */
function cardLift({ card }: Evidence, { name, side }: Column): number | undefined {
  const { lobeLift, valveLift } = card[side];
  return name === 'lobe lift' ? lobeLift : valveLift;
}

/** A column of hardly more than one number does not show how fine it was read: the sheet beside it does. */
const showsDivision = (readings: readonly SheetEvidence[]): boolean =>
  new Set(readings.map((each) => Math.round(liftOf(each) / EQUAL))).size >= FEWEST;

/** A column that stands at the card's own figure: entered off the card, and read by nobody. */
function ofCard(evidence: Evidence, column: Column, written: readonly SheetEvidence[]): AssessedQuestion[] {
  const { name, side, spring, rows } = column;
  const card = cardLift(evidence, column);
  const readings = rows.flat();
  if (card === undefined || rows.length < FEWEST) return [];
  const alike = rows.filter((row) => row.every((each) => Math.abs(liftOf(each) - card) <= EQUAL)).length;
  const division = divisionOf((showsDivision(readings) ? readings : written).map(liftOf));
  const chance = chanceOfSoMany(
    rows.length,
    alike,
    sameDivisionChance(division, name === 'lobe lift' ? LOBES : LIFTS),
  );
  if (alike < FEWEST || chance >= ASKED) return [];
  return [
    asked(
      {
        code: 'copied-reading',
        // Lobes are ground to their card.
        weight: name === 'valve lift' && alike === rows.length && chance < STRONG ? 'strong' : 'weak',
        ask: `Were the ${name}s of the ${side} valves read, or are they the card’s own, ${inches(card)}?`,
        knownBy: `were the ${name}s of the ${side} valves read or are they off the card`,
        size: `${alike} of ${rows.length} stand at the card’s figure, to the last digit.`,
        test: `Ask whoever entered them; else read one of those ${name}s again, and enter what was read.`,
        restsOn: readings.map(({ id }) => id),
      },
      {
        about: { of: 'side', valve: side },
        step: 'sheet',
        among: `${name.replace(' ', '-')}-${spring}-card`,
        answers: evidence.answers,
        choices: answersOf('copied-reading'),
      },
    ),
  ];
}

/** Columns that may be one column entered twice, of the other side or of the lobes, or that are the card's. */
export function columnsAlike(evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] {
  const columns = columnsOf(rows);
  const written = columns.flatMap((column) => column.rows.flat());
  return [
    ...columns.flatMap((column) => ofCard(evidence, column, written)),
    ...acrossSides(evidence, rows),
    ...lobesAsLifts(evidence, rows),
  ];
}
