import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import type { AnswerChoice } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { SheetEvidence } from '../../evidence.ts';
import type { SheetRow } from './rows.ts';

/** Two valves that read each like the other did before: their arms may have changed places in between. */
export const CHANGED_OVER: AnswerChoice = {
  code: 'changed-over',
  holds: true,
  label: 'Arms or pushrods were changed over between',
  changes:
    'Each reading is entered again with the arm that was on it then, or where each arm sat is put right.',
};

/** Readings of one thing that do not go together. */
export interface Otherwise {
  readonly of: 'lobe lift' | 'valve lift';
  readonly among: string;
  /** What was read: `.522 in and .557 in`. */
  readonly readAs: string;
  readonly restsOn: readonly string[];
  /** The least and the most of two readings that do not go together [m]. */
  readonly ends?: readonly [number, number];
}

export function endsOf(readings: readonly SheetEvidence[]): Pick<Otherwise, 'ends'> {
  const values = readings.flatMap(({ reading: { value } }) => value ?? []);
  return values.length < 2 ? {} : { ends: [Math.min(...values), Math.max(...values)] };
}

/** Another valve of that side that reads low and high as this one does: 5 low then high, 7 high then low. */
export function changedOver(
  row: SheetRow,
  own: Otherwise,
  all: readonly { readonly row: SheetRow; readonly own: Otherwise }[],
): string | undefined {
  const alike = (other: Otherwise) =>
    other.of === 'valve lift' &&
    other.among === own.among &&
    [0, 1].every(
      (end) => Math.abs((other.ends?.[end] ?? 0) - (own.ends?.[end] ?? 1)) <= 2 * allowance('repeat'),
    );
  const others = all.filter(
    (each) => each.row !== row && sideOfValve(each.row.valve) === sideOfValve(row.valve) && alike(each.own),
  );
  const [other] = others;
  return own.of !== 'valve lift' || others.length !== 1 || other === undefined
    ? undefined
    : placeOf(other.row);
}
