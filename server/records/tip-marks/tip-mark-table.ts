import type { Selectable } from 'kysely';
import { isUnit } from '../../../shared/quantities/units.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import { MARK_FOUND, MARK_SIDES, type NewTipMark, PUSHROD_OVER } from '../../../shared/schemas/tip-mark.ts';
import type { ValveName } from '../../../shared/schemas/words.ts';
import { SPRINGS, storedWord, VALVES } from '../../../shared/schemas/words.ts';
import type { Tx } from '../../database/database.ts';
import type { TipMarkTable } from '../../database/tables/marks-and-lash.ts';
import type { Entry } from '../corrections/entries.ts';
import { TIP_MARK_EVENTS } from './events.ts';

/** A mark on a stem's end, as it was measured. */
export interface TipMark extends Entry {
  readonly cylinder: number;
  readonly valve: ValveName;
  readonly width: Entered;
  readonly side: keyof typeof MARK_SIDES;
  readonly off: Entered | undefined;
  readonly pushrod: Entered | undefined;
  readonly pushrodOver: keyof typeof PUSHROD_OVER;
  readonly shims: Entered | undefined;
  readonly stem: Entered | undefined;
  readonly spring: keyof typeof SPRINGS;
  readonly found: keyof typeof MARK_FOUND;
  readonly armId: string | undefined;
  readonly readAs: string;
}

type Row = Selectable<TipMarkTable>;
type Measured = Omit<NewTipMark, 'cylinder' | 'valve'>;

function enteredOf(
  value: number | null,
  unit: string | null,
  typed: string | null,
  readAs: string | null,
): Entered | undefined {
  if (value === null || unit === null) return undefined;
  if (!isUnit(unit)) throw new Error(`a stored tip mark has the unknown unit ${unit}`);
  return { value, unit, typed: typed ?? '', readAs: readAs ?? '' };
}

function show(row: Row, entry: Entry): TipMark {
  const width = enteredOf(row.width_value, row.width_unit, row.width_typed, row.width_read_as);
  if (width === undefined) throw new Error('a stored tip mark has no width');
  return {
    ...entry,
    cylinder: row.cylinder,
    valve: storedWord(VALVES, row.valve),
    width,
    side: storedWord(MARK_SIDES, row.side),
    off: enteredOf(row.off_value, row.off_unit, row.off_typed, row.off_read_as),
    pushrod: enteredOf(row.pushrod_value, row.pushrod_unit, row.pushrod_typed, row.pushrod_read_as),
    pushrodOver: storedWord(PUSHROD_OVER, row.pushrod_over),
    shims: enteredOf(row.shims_value, row.shims_unit, row.shims_typed, row.shims_read_as),
    stem: enteredOf(row.stem_value, row.stem_unit, row.stem_typed, row.stem_read_as),
    spring: storedWord(SPRINGS, row.spring),
    found: storedWord(MARK_FOUND, row.found),
    armId: row.arm_id ?? undefined,
    readAs: row.read_as,
  };
}

export const TIP_MARKS = {
  events: { replaced: TIP_MARK_EVENTS['tip-mark-replaced'], struck: TIP_MARK_EVENTS['tip-mark-struck'] },
  query: (tx: Tx) => tx.selectFrom('tip_mark').selectAll().orderBy('seq'),
  show,
};

/** `.062 in wide, .030 in toward the exhaust side, pushrod 7.800 in` */
export function markReadAs({ width, side, off, pushrod, shims }: Measured): string {
  const place = MARK_SIDES[side].toLowerCase();
  const at = off === undefined ? place : `${off.readAs} ${place}`;
  const made = [
    ...(pushrod === undefined ? [] : [`, pushrod ${pushrod.readAs}`]),
    ...(shims === undefined ? [] : [shims.value === 0 ? ', no shims' : `, ${shims.readAs} of shims`]),
  ];
  return `${width.readAs} wide, ${at}${made.join('')}`;
}

/** What was measured, as the columns of a row. */
export const columnsOf = (mark: Measured) => ({
  side: mark.side,
  width_value: mark.width.value,
  width_unit: mark.width.unit,
  width_typed: mark.width.typed,
  width_read_as: mark.width.readAs,
  off_value: mark.off?.value ?? null,
  off_unit: mark.off?.unit ?? null,
  off_typed: mark.off?.typed ?? null,
  off_read_as: mark.off?.readAs ?? null,
  pushrod_value: mark.pushrod?.value ?? null,
  pushrod_unit: mark.pushrod?.unit ?? null,
  pushrod_typed: mark.pushrod?.typed ?? null,
  pushrod_read_as: mark.pushrod?.readAs ?? null,
  pushrod_over: mark.pushrodOver,
  shims_value: mark.shims?.value ?? null,
  shims_unit: mark.shims?.unit ?? null,
  shims_typed: mark.shims?.typed ?? null,
  shims_read_as: mark.shims?.readAs ?? null,
  stem_value: mark.stem?.value ?? null,
  stem_unit: mark.stem?.unit ?? null,
  stem_typed: mark.stem?.typed ?? null,
  stem_read_as: mark.stem?.readAs ?? null,
  spring: mark.spring,
  found: mark.found,
  read_as: markReadAs(mark),
});
