import { formatFigure, formatQuantity } from '../../../shared/quantities/format.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { type ValveGear, valveSaid } from '../../../shared/schemas/words.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { type DrawnMark, tipMarks } from '../../drawings/tip-mark.ts';
import type { TipMarkEvidence } from '../../mechanics/assessment/evidence.ts';
import type { MarkedValveDetail } from '../../mechanics/assessment/marks/detail.ts';
import { DRAWN_STEM } from '../../mechanics/kit/drawn-stem.ts';

/** As many as are told apart side by side on a phone; all of them stand in the table. */
const MOST = 6;

const inches = (si: number): number => fromSi(si, 'in').value;

export const inchText = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });
const figure = (si: number): string => formatFigure(fromSi(si, 'in'), { places: 3 });

const OF_FOLLOWER = {
  centred: 'centred',
  valley: 'to pivot',
  exhaust: 'away from the pivot',
  sideways: 'sideways',
} as const;

/** `.030 valley`; of a follower `.030 to pivot` */
export function placeText(
  { side, off }: Pick<TipMarkEvidence, 'side' | 'off'>,
  gear: ValveGear | undefined,
): string {
  const word = gear === 'finger-follower' ? OF_FOLLOWER[side] : side;
  return off === undefined ? word : `${figure(off)} ${word}`;
}

function drawn(mark: TipMarkEvidence, gear: ValveGear | undefined): DrawnMark {
  const toSide = mark.side === 'exhaust' ? 1 : mark.side === 'valley' ? -1 : 0;
  const farUnknown = toSide !== 0 && mark.off === undefined;
  return {
    name:
      gear === 'finger-follower'
        ? `line ${mark.line}`
        : mark.pushrod === undefined
          ? 'no length said'
          : figure(mark.pushrod),
    width: inches(mark.width),
    off: toSide * (farUnknown ? 1 : inches(mark.off ?? 0)),
    sideways: mark.side === 'sideways',
    where: placeText(mark, gear),
    ...(farUnknown ? { farUnknown } : {}),
  };
}

const lengthOf = ({ pushrod }: TipMarkEvidence): number => pushrod ?? Number.POSITIVE_INFINITY;

/** The best marks of a valve side by side, by the length of their pushrods, to the scale of its stem. */
export function marksDrawing(
  { cylinder, valve, marks, least, lookAgainOver }: MarkedValveDetail,
  gear: ValveGear | undefined,
): Drawing {
  const follower = gear === 'finger-follower';
  const stem = marks.findLast((mark) => mark.stem !== undefined)?.stem;
  const shown = marks.slice(-MOST).toSorted((a, b) => lengthOf(a) - lengthOf(b) || a.line - b.line);
  return tipMarks(
    {
      title: `Marks on ${cylinder} ${valveSaid(valve)}${follower ? '' : ', by pushrod length'}`,
      follower,
      stem: stem === undefined ? DRAWN_STEM : inches(stem),
      stemKnown: stem !== undefined,
      marks: shown.map((mark) => drawn(mark, gear)),
      ...(least.value === undefined || lookAgainOver === undefined
        ? {}
        : { least: { width: inches(least.value), most: inches(lookAgainOver) } }),
    },
    { id: `marks-${cylinder}-${valve}`, ruler: rulerOf(spokenUnits()) },
  );
}
