import { IN } from '../../kit/si.ts';
import { copiedReading } from '../../questions/copied-reading.ts';
import { defaultTolerances, type Tolerances } from '../../questions/tolerances.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { Evidence, SheetEvidence, Side, Spring } from '../evidence.ts';
import { questionInput } from './question-input.ts';
import type { SheetRow } from './rows.ts';

interface Column {
  readonly row: SheetRow;
  readonly readings: readonly SheetEvidence[];
  readonly value: number;
}

/** One number that stands for many valves of a side: a column may have been copied down. */
function inColumn(
  evidence: Evidence,
  column: readonly Column[],
  of: { readonly side: Side; readonly spring: Spring; readonly name: string; readonly weak: boolean },
  tolerances: Tolerances,
): AssessedQuestion[] {
  const raised = column.flatMap((each) => {
    const peaks = column.filter((other) => other !== each).map(({ value }) => value);
    const lot = { spring: of.spring, readings: each.readings };
    const input = questionInput(evidence, { ...each.row, lobes: [] }, lot, { own: {}, other: {}, peaks });
    return copiedReading(input, tolerances);
  });
  const strongest = raised.find(({ weight }) => weight === 'strong') ?? raised[0];
  if (strongest === undefined) return [];
  return [
    asked(
      {
        ...strongest,
        weight: of.weak ? 'weak' : strongest.weight,
        ask: `Was each ${of.name} of the ${of.side} valves read, or was one number carried over?`,
        restsOn: raised.flatMap(({ restsOn }) => restsOn),
      },
      {
        about: { of: 'side', valve: of.side },
        step: 'sheet',
        among: `${of.name.replace(' ', '-')}-${of.spring}`,
        answers: evidence.answers,
      },
    ),
  ];
}

const positive = (column: readonly Column[]) => column.filter(({ value }) => value > 0 && value < 100 * IN);

/** Columns that may have been copied down; lobes are ground alike and may read alike, so of those it is asked weakly. */
export function copiedColumns(
  evidence: Evidence,
  rows: readonly SheetRow[],
  tolerances: Tolerances = defaultTolerances,
): AssessedQuestion[] {
  const sides: readonly Side[] = ['intake', 'exhaust'];
  return sides.flatMap((side) => {
    const own = rows.filter(({ valve }) => valve === side);
    const springs = [...new Set(own.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)))].sort();
    const lifts = springs.flatMap((spring) => {
      const column = own.flatMap((row) =>
        row.lifts.flatMap((lot): Column[] =>
          lot.spring !== spring || lot.figure.value === undefined
            ? []
            : [{ row, readings: lot.readings, value: lot.figure.value }],
        ),
      );
      return inColumn(
        evidence,
        positive(column),
        { side, spring, name: 'valve lift', weak: false },
        tolerances,
      );
    });
    const lobes = own.flatMap((row): Column[] =>
      row.lobe?.value === undefined ? [] : [{ row, readings: row.lobes, value: row.lobe.value }],
    );
    const ofLobes = { side, spring: 'not-said', name: 'lobe lift', weak: true } as const;
    return [...lifts, ...inColumn(evidence, positive(lobes), ofLobes, tolerances)];
  });
}
