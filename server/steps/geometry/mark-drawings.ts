import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { type Entered, inches } from '../../../shared/schemas/entered.ts';
import type { MarkedValve } from '../../assessment/tip-marks/judged.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { type DrawnMark, tipMarks } from '../../drawings/tip-mark.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';

/** A common stem, where nobody said what this one measures; the drawing says so. */
const COMMON_STEM = 0.342;
/** As many as are told apart side by side on a phone; all of them stand in the table. */
const MOST = 6;

export const inchText = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });
const figure = (entry: Entered): string =>
  formatQuantity({ value: inches(entry), unit: 'in' }, { places: 3 }).slice(0, -3);

/** `.030 to the valley` */
export function placeText({ side, off }: TipMark): string {
  const at = off === undefined ? '' : `${figure(off)} `;
  if (side === 'centred' || side === 'sideways') return `${at}${side}`;
  return `${at}${side}`;
}

function drawn(mark: TipMark): DrawnMark {
  const off = mark.off === undefined ? 0 : inches(mark.off);
  return {
    name: mark.pushrod === undefined ? 'no length said' : figure(mark.pushrod),
    width: inches(mark.width),
    off: mark.side === 'exhaust' ? off : mark.side === 'valley' ? -off : 0,
    sideways: mark.side === 'sideways',
    where: placeText(mark),
  };
}

const lengthOf = ({ pushrod }: TipMark): number =>
  pushrod === undefined ? Number.POSITIVE_INFINITY : inches(pushrod);

/** The newest marks of a valve side by side, by the length of their pushrods, to the scale of its stem. */
export function marksDrawing({ cylinder, valve, marks, least, lookAgainOver }: MarkedValve): Drawing {
  const stem = marks.findLast((mark) => mark.stem !== undefined)?.stem;
  const shown = marks.slice(-MOST).toSorted((a, b) => lengthOf(a) - lengthOf(b) || a.seq - b.seq);
  return tipMarks(
    {
      title: `Marks on ${cylinder} ${valve}, by pushrod length`,
      stem: stem === undefined ? COMMON_STEM : inches(stem),
      stemKnown: stem !== undefined,
      marks: shown.map(drawn),
      ...(least.value === undefined || lookAgainOver === undefined
        ? {}
        : {
            least: { width: fromSi(least.value, 'in').value, most: fromSi(lookAgainOver, 'in').value },
          }),
    },
    { id: `marks-${cylinder}-${valve}`, ruler: rulerOf('inch') },
  );
}
