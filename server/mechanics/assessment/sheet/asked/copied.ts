import { formatQuantity } from '../../../../../shared/quantities/format.ts';
import { IN } from '../../../kit/si.ts';
import {
  alikeChance,
  chanceOfSoMany,
  divisionOf,
  sameDivisionChance,
} from '../../../valve-sheet/honest-repeats.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import { asked } from '../../common/asked.ts';
import type { Evidence } from '../../evidence.ts';
import { type Column, columnsOf } from '../rows/columns.ts';
import { liftOf, mostAtOne, repeats } from '../rows/equal-readings.ts';
import type { SheetRow } from '../rows/rows.ts';

/*
 * Readings are often equal honestly: a dial has divisions, lobes are ground alike. A copy is asked about only where
 * so many equal ones are too much of a chance. The scatters are small on purpose, so that honest readings are seldom
 * asked: common practice, no published source.
 */

/** Standard deviation of a pass: careful ones lie within .002 in, four of these. */
const PASS = 0.0005 * IN;
/** The same from one valve to the next: lobes are ground alike, lifts carry their arm as well. */
export const LOBES = 0.0005 * IN;
export const LIFTS = 0.0015 * IN;
/** Asked where the chance is smaller. */
export const ASKED = 0.01;
/** Nothing on the side is believed while the chance is smaller. */
export const STRONG = 0.001;

/** `about 1 in 320`, to two digits. */
const oneIn = (chance: number): string => {
  const times = 1 / Math.max(chance, 1e-6);
  return chance < 1e-6 ? 'less than 1 in a million' : `about 1 in ${Number(times.toPrecision(2))}`;
};

const divisionSaid = (division: number): string => {
  const inches = division / IN;
  return Math.abs(inches * 1e4 - Math.round(inches * 1e4)) < 1e-6
    ? formatQuantity({ value: inches, unit: 'in' }, { places: inches < 0.00095 ? 4 : 3 })
    : `${Number((inches * 25.4).toFixed(3))} mm`;
};

interface Found {
  readonly kind: 'one number' | 'passes';
  readonly weight: 'strong' | 'weak';
  readonly ask: string;
  readonly size: string;
}

/** One number down the column. */
function oneNumber({ name, side, rows }: Column, division: number): Found[] {
  const alike = mostAtOne(rows);
  const chance = chanceOfSoMany(
    rows.length - 1,
    alike - 1,
    sameDivisionChance(division, name === 'lobe lift' ? LOBES : LIFTS),
  );
  if (alike < 3 || chance >= ASKED) return [];
  return [
    {
      kind: 'one number',
      // Lobes are ground alike and may read alike.
      weight: name === 'valve lift' && alike === rows.length && chance < STRONG ? 'strong' : 'weak',
      ask: `Was each ${name} of the ${side} valves read, or was one number carried over?`,
      size: `${alike} of ${rows.length} stand at one number; read to ${divisionSaid(division)} that is ${oneIn(chance)} by chance.`,
    },
  ];
}

/** Every pass like the one before it, to the last digit. The passes are believed; only that they repeat is not. */
function samePasses({ name, side, rows }: Column, division: number): Found[] {
  const again = rows.filter((row) => row.length > 1);
  const { pairs, alike } = repeats(again);
  const chance = chanceOfSoMany(pairs, alike, alikeChance(division, PASS));
  if (pairs === 0 || chance >= ASKED) return [];
  return [
    {
      kind: 'passes',
      weight: 'weak',
      ask: `Was each ${name} of the ${side} valves read again, or was the first pass copied?`,
      size: `${alike} of ${pairs} repeat to the last digit; read to ${divisionSaid(division)} that is ${oneIn(chance)} by chance.`,
    },
  ];
}

function ofColumn(evidence: Evidence, column: Column): AssessedQuestion[] {
  const readings = column.rows.flat();
  if (readings.length < 2) return [];
  const division = divisionOf(readings.map(liftOf));
  return [...oneNumber(column, division), ...samePasses(column, division)].map(({ kind, ...found }) =>
    asked(
      {
        code: 'copied-reading',
        ...found,
        test: 'Touch one of those valves while its lobe lifts it, and read it again.',
        restsOn: readings.map(({ id }) => id),
      },
      {
        about: { of: 'side', valve: column.side },
        step: 'sheet',
        among: [column.name.replace(' ', '-'), column.spring, ...(kind === 'passes' ? ['again'] : [])].join(
          '-',
        ),
        answers: evidence.answers,
        choices: answersOf('copied-reading'),
      },
    ),
  );
}

/** Columns that may have been copied: one number down a side, or a second pass that is the first. */
export const copiedColumns = (evidence: Evidence, rows: readonly SheetRow[]): AssessedQuestion[] =>
  columnsOf(rows).flatMap((column) => ofColumn(evidence, column));
