import { IN } from '../../../kit/si.ts';
import { chanceOfSoMany, divisionOf, sameDivisionChance } from '../../../valve-sheet/honest-repeats.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import { asked } from '../../common/asked.ts';
import { listed } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { columnsOf } from '../rows/columns.ts';
import { liftOf, mostAtOne } from '../rows/equal-readings.ts';
import type { SheetRow } from '../rows/rows.ts';
import { ASKED, LIFTS, LOBES, STRONG } from './copied.ts';

const EQUAL = 1e-9 * IN;
/** One cylinder that reads as another may well do so. */
const FEWEST = 2;

/** One figure of a cylinder: which it is, and how likely an honest one of another cylinder is the same. */
interface Figure {
  readonly is: string;
  readonly valve: string;
  readonly value: number;
  readonly alike: number;
  readonly ids: readonly string[];
}

/** The figures of each cylinder; a column that stands at one number for the most part is asked about by itself. */
function figuresOf(rows: readonly SheetRow[]): ReadonlyMap<number, readonly Figure[]> {
  const all = columnsOf(rows).flatMap(({ name, side, spring, rows: valves }) => {
    if (2 * mostAtOne(valves) > valves.length) return [];
    const division = divisionOf(valves.flat().map(liftOf));
    const alike = sameDivisionChance(division, name === 'lobe lift' ? LOBES : LIFTS);
    return valves.flatMap((readings) => {
      const [first] = readings;
      // Read twice and not alike, it is nobody's copy.
      if (first === undefined || readings.some((each) => Math.abs(liftOf(each) - liftOf(first)) > EQUAL))
        return [];
      const figure: Figure = {
        is: `${name} ${spring} ${side} ${first.valve}`,
        valve: first.valve,
        value: liftOf(first),
        alike,
        ids: readings.map(({ id }) => id),
      };
      return [{ cylinder: first.cylinder, figure }];
    });
  });
  const cylinders = [...new Set(all.map(({ cylinder }) => cylinder))].sort((a, b) => a - b);
  return new Map(
    cylinders.map((cylinder) => [
      cylinder,
      all.filter((each) => each.cylinder === cylinder).map(({ figure }) => figure),
    ]),
  );
}

/** Two cylinders beside one another in the copy that they may be of. */
interface Pair {
  readonly of: number;
  readonly copy: number;
  readonly chance: number;
  readonly isAlike: boolean;
  readonly ids: readonly string[];
}

function pairOf(one: readonly Figure[], other: readonly Figure[]): Omit<Pair, 'of' | 'copy'> | undefined {
  const common = other.flatMap((figure) => {
    const same = one.find(({ is }) => is === figure.is);
    return same === undefined ? [] : [{ figure, same }];
  });
  if (common.length === 0) return undefined;
  // Lobe and valve lift of one valve go together: of each valve the figure that says most counts.
  const valves = [...new Set(common.map(({ figure }) => figure.valve))];
  const chances = valves.map((valve) =>
    Math.min(...common.flatMap(({ figure }) => (figure.valve === valve ? [figure.alike] : []))),
  );
  return {
    chance: chances.reduce((product, each) => product * each, 1),
    isAlike: common.every(({ figure, same }) => Math.abs(figure.value - same.value) <= EQUAL),
    ids: common.flatMap(({ figure }) => figure.ids),
  };
}

interface Block {
  readonly pairs: readonly Pair[];
  readonly chance: number;
}

/** Cylinders that are others to the last digit, each as many numbers on, where that is too much of a chance. */
function blocksOf(figures: ReadonlyMap<number, readonly Figure[]>): Block[] {
  const cylinders = [...figures.keys()];
  const shifts = [...new Set(cylinders.flatMap((a) => cylinders.map((b) => b - a)))].filter((by) => by > 0);
  const isAlike = (a: number, b: number): boolean =>
    a !== b && pairOf(figures.get(a) ?? [], figures.get(b) ?? [])?.isAlike === true;
  // A row that is like several others is a pattern that they have in common, and no copy of one of them.
  const isOnce = (cylinder: number): boolean =>
    cylinders.filter((each) => isAlike(cylinder, each)).length === 1;
  return shifts.flatMap((by) => {
    const pairs = cylinders.flatMap((of): Pair[] => {
      const pair = pairOf(figures.get(of) ?? [], figures.get(of + by) ?? []);
      return pair === undefined ? [] : [{ of, copy: of + by, ...pair }];
    });
    const alike = pairs.filter((pair) => pair.isAlike && isOnce(pair.of) && isOnce(pair.copy));
    const each = Math.max(0, ...pairs.map(({ chance }) => chance));
    // Each number of cylinders on is one more chance of it.
    const chance = Math.min(1, shifts.length * chanceOfSoMany(pairs.length, alike.length, each));
    return alike.length < FEWEST || chance >= ASKED ? [] : [{ pairs: alike, chance }];
  });
}

/** `5 to 8`, `2, 4 and 6` */
function cylindersSaid(cylinders: readonly number[]): string {
  const [first, last] = [cylinders[0], cylinders.at(-1)];
  const isRun = cylinders.every((each, at) => each === (first ?? 0) + at);
  return isRun && cylinders.length > 2 ? `${first} to ${last}` : listed(cylinders.map(String));
}

/** Rows of some cylinders that are the rows of others, figure by figure: read, or entered twice? */
export function copiedRows(evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] {
  const [block] = blocksOf(figuresOf(rows)).toSorted((a, b) => a.chance - b.chance);
  if (block === undefined) return [];
  const { pairs, chance } = block;
  const [of, copies] = [
    cylindersSaid(pairs.map((each) => each.of)),
    cylindersSaid(pairs.map(({ copy }) => copy)),
  ];
  const restsOn = pairs.flatMap(({ ids }) => ids);
  return [
    asked(
      {
        code: 'copied-reading',
        weight: chance < STRONG ? 'strong' : 'weak',
        ask: `Were cylinders ${copies} read, or are they ${of} entered twice?`,
        size: `All ${restsOn.length} figures are those of ${of}, to the last digit.`,
        test: 'Look at the sheet they came from; else touch one of those valves while its lobe lifts it, read it again, and enter what was read.',
        restsOn,
      },
      {
        about: { of: 'build' },
        step: 'sheet',
        among: `cylinders-${pairs.map(({ copy }) => copy).join('-')}-as-${pairs.map((each) => each.of).join('-')}`,
        answers: evidence.answers,
        choices: answersOf('copied-reading'),
      },
    ),
  ];
}
