import { PART_FITTINGS } from '../../shared/schemas/part-words.ts';
import { levelDimension, uprightDimension } from './dimension.ts';
import type { Drawing } from './drawing.ts';
import { at, element, line, path } from './svg.ts';

type Fitting = keyof typeof PART_FITTINGS;

const MIDDLE = 110;
const HALF = 40;
const LEFT = 30;
const STEP = 19;
const CRESTS = 12;
const DEPTH = 9;
const RIGHT = LEFT + CRESTS * STEP;

/** One edge of a thread seen from the side, crest to crest. */
function threadEdge(y: number, inward: number): string {
  const turns = Array.from({ length: CRESTS }, (_, turn) => {
    const x = LEFT + turn * STEP;
    return `L${at(x + STEP / 2)} ${at(y + inward * DEPTH)}L${at(x + STEP)} ${at(y)}`;
  });
  return path('draw-outline', `M${LEFT} ${at(y)}${turns.join('')}`);
}

const stud = (): string =>
  threadEdge(MIDDLE - HALF, 1) +
  threadEdge(MIDDLE + HALF, -1) +
  path('draw-outline', `M${LEFT} ${MIDDLE - HALF}V${MIDDLE + HALF}`) +
  line('draw-centre', LEFT - 14, MIDDLE, RIGHT + 14, MIDDLE);

const stem = (): string =>
  path('draw-outline', `M${LEFT} ${MIDDLE - 22}H250V${MIDDLE + 22}H${LEFT}Z`) +
  path(
    'draw-outline',
    `M222 ${MIDDLE - 22}V${MIDDLE - 17}H232V${MIDDLE - 22}M222 ${MIDDLE + 22}V${MIDDLE + 17}H232V${MIDDLE + 22}`,
  ) +
  line('draw-centre', LEFT - 14, MIDDLE, 264, MIDDLE);

const DRAWN: Readonly<
  Record<Fitting, { readonly outline: () => string; readonly asked: () => string; readonly where: string }>
> = {
  'stud-diameter': {
    outline: stud,
    asked: () =>
      uprightDimension({ x: 280, from: MIDDLE - HALF, to: MIDDLE + HALF, text: 'over', outline: RIGHT }),
    where: 'A stud from the side. Marked is the diameter over the crests of its thread.',
  },
  'stud-pitch': {
    outline: stud,
    asked: () =>
      levelDimension({
        y: 40,
        from: LEFT,
        to: LEFT + 10 * STEP,
        text: 'ten threads',
        outline: MIDDLE - HALF - 4,
      }),
    where: 'A stud from the side. Marked is the length from one crest to the tenth crest after it.',
  },
  'stem-diameter': {
    outline: stem,
    asked: () => uprightDimension({ x: 280, from: MIDDLE - 22, to: MIDDLE + 22, text: 'stem', outline: 252 }),
    where: 'A valve stem from the side, the groove of its locks at the right. Marked is its diameter.',
  },
};

/** What belongs to the part and is no part of it, with what is measured of it. */
export function fittingDrawing(id: string, asked: Fitting): Drawing {
  const { outline, asked: dimension, where } = DRAWN[asked];
  return {
    id,
    title: `Where to measure: ${PART_FITTINGS[asked].toLowerCase()}`,
    desc: where,
    viewBox: '0 0 320 190',
    toScale: false,
    svg: outline() + element('g', { class: 'draw-asked' }, dimension()),
  };
}
