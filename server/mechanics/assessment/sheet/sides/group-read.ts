import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { banksOf } from '../../../valve-sheet/orders.ts';
import { twoGroups } from '../../../valve-sheet/two-groups.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import type { Evidence } from '../../evidence.ts';
import type { SheetRow } from '../rows/rows.ts';
import { asSibling } from '../rows/siblings.ts';
import { leftOfGroup } from './group-answered.ts';

/** Slips of the eye, and the lash of one valve: several do not have the same by chance. */
const OF_ONE: ReadonlySet<string> = new Set(['hand-read-backwards', 'digits-swapped', 'lash-left-in']);

/** Readings of lifts whose side falls into two groups: what they have in common is asked of all at once. */
function readInGroups(evidence: Evidence, rows: readonly SheetRow[]): ReadonlySet<string> {
  const { engine } = evidence;
  const cylinders = Math.max(engine.cylinders ?? 0, ...rows.map(({ cylinder }) => cylinder));
  const banks = banksOf(engine.bankOrder, cylinders);
  const springs = [...new Set(rows.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)))];
  const found = (['intake', 'exhaust'] as const).flatMap((side) =>
    springs.flatMap((spring) => {
      const own = rows.filter(({ valve }) => sideOfValve(valve) === side);
      const valves = own.map((row) =>
        asSibling(row, spring, { calipers: false, lots: [], ofSetUps: [], inDoubt: false }),
      );
      const groups = twoGroups(valves, banks) ?? leftOfGroup(evidence, { side, spring }, valves);
      if (groups === undefined) return [];
      return own.flatMap(({ lifts }) => lifts.filter((lot) => lot.spring === spring));
    }),
  );
  return new Set(found.flatMap(({ readings }) => readings.map(({ id }) => id)));
}

/** The questions without those that are asked of one valve where several are off alike; what was answered stays. */
export function besidesGroups(
  questions: readonly AssessedQuestion[],
  evidence: Evidence,
  rows: readonly SheetRow[],
): AssessedQuestion[] {
  const grouped = readInGroups(evidence, rows);
  return questions.filter(
    ({ code, about, answered, restsOn }) =>
      !OF_ONE.has(code) ||
      about.of !== 'valve' ||
      answered !== undefined ||
      restsOn.length === 0 ||
      !restsOn.every((id) => grouped.has(id)),
  );
}
