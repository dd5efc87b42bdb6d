import { formatNumber } from '../../shared/quantities/format.ts';
import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { circle, label, line } from './svg.ts';

interface RockerArms {
  readonly pivotToTip: number;
  readonly pivotToCup: number;
  readonly ratio: number;
}

const LEFT = 44;
const RIGHT = 276;
const LEVEL = 92;

/** Tip, pivot and cup as three centres in one line, each arm dimensioned. */
export function rockerArms({ pivotToTip, pivotToCup, ratio }: RockerArms, { id, ruler }: DrawnFor): Drawing {
  const scale = (RIGHT - LEFT) / (pivotToTip + pivotToCup);
  const pivot = LEFT + pivotToTip * scale;
  const shown = formatNumber(ratio, 3);
  // A short arm leaves no room between its centres for its figure, so each stands on a line of its own.
  const arm = (from: number, to: number, length: number, y: number) =>
    levelDimension({ y, from, to, text: ruler.figure(length), outline: LEVEL });
  return {
    id,
    title: 'Rocker, centre to centre',
    desc: `Pivot to tip ${ruler.text(pivotToTip)}, pivot to cup ${ruler.text(pivotToCup)}: ratio ${shown}.`,
    viewBox: '0 0 320 178',
    svg:
      line('draw-moving', LEFT, LEVEL, RIGHT, LEVEL) +
      circle('draw-outline', LEFT, LEVEL, 9) +
      circle('draw-outline', pivot, LEVEL, 6) +
      circle('draw-outline', RIGHT, LEVEL, 5) +
      arm(LEFT, pivot, pivotToTip, 58) +
      arm(pivot, RIGHT, pivotToCup, 32) +
      label(LEFT, LEVEL + 28, 'tip', { anchor: 'middle', soft: true }) +
      label(RIGHT, LEVEL + 28, 'cup', { anchor: 'middle', soft: true }) +
      label(Math.min(Math.max(pivot, 80), 240), LEVEL + 46, 'pivot', { anchor: 'middle', soft: true }) +
      label(312, 170, `ratio ${shown}`, { anchor: 'end', className: 'draw-text-strong' }),
    toScale: true,
    caption: 'The three centres drawn in one line; the bend of the arm is left off',
    table: {
      caption: 'Arms of the rocker',
      columns: [{ label: 'What' }, { label: 'Figure', number: true }],
      rows: [
        { cells: ['Pivot to tip', ruler.text(pivotToTip)] },
        { cells: ['Pivot to cup', ruler.text(pivotToCup)] },
        { cells: ['Ratio', shown] },
      ],
    },
  };
}
