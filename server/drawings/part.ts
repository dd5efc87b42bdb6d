import { PART_FEATURES, PART_SIZES } from '../../shared/schemas/part-words.ts';
import { levelDimension, uprightDimension } from './dimension.ts';
import type { Drawing } from './drawing.ts';
import { CUP, FROM_ABOVE, fromAbove, fromTheSide, PIVOT, ROLLER } from './part-outline.ts';
import { element, label } from './svg.ts';

export type AskedOfPart = keyof typeof PART_SIZES | keyof typeof PART_FEATURES;

const { trunnion, body, middle, hole } = FROM_ABOVE;

/** The dimension that is asked for, on the view that shows it. */
const DIMENSIONS: Readonly<Record<AskedOfPart, () => string>> = {
  'pivot-to-tip': () =>
    levelDimension({ y: 22, from: ROLLER.x, to: PIVOT.x, text: 'pivot to tip', outline: 42 }),
  'pivot-to-cup': () =>
    levelDimension({ y: 22, from: PIVOT.x, to: CUP.x, text: 'pivot to cup', outline: 42 }),
  'roller-diameter': () =>
    levelDimension({ y: 142, from: ROLLER.x - ROLLER.r, to: ROLLER.x + ROLLER.r, text: '', outline: 112 }) +
    label(ROLLER.x + 26, 146, 'roller diameter'),
  'hole-across-trunnion': () =>
    levelDimension({
      y: 160,
      from: PIVOT.x - hole,
      to: PIVOT.x + hole,
      text: '',
      outline: middle - hole - 4,
    }) + label(PIVOT.x + 38, 160, 'hole across'),
  'width-across-trunnion': () =>
    uprightDimension({
      x: 226,
      from: trunnion.from,
      to: trunnion.to,
      text: '',
      outline: trunnion.right + 6,
    }) + label(234, 284, 'width'),
  'body-width': () =>
    uprightDimension({ x: 226, from: body.from, to: body.to, text: '', outline: body.edge }) +
    label(234, 284, 'body'),
  rings: () => label(202, 188, 'rings here?') + label(202, 276, 'and here?'),
  tip: () => label(30, 156, 'roller or sliding shoe?'),
  mount: () => label(316, 22, 'stud, pedestal or shaft?', { anchor: 'end' }),
};

const TITLES: Readonly<Record<AskedOfPart, string>> = { ...PART_SIZES, ...PART_FEATURES };

const WHERE: Readonly<Record<AskedOfPart, string>> = {
  'hole-across-trunnion': 'across the hole that the stud or bolt goes through, seen from above',
  'width-across-trunnion': 'over both ends of the trunnion, seen from above',
  'roller-diameter': 'over the roller that runs on the valve',
  'body-width': 'across the side faces of the body at the pivot, seen from above',
  'pivot-to-tip': 'from the middle of the trunnion to the middle of the roller',
  'pivot-to-cup': 'from the middle of the trunnion to the middle of the pushrod cup',
  rings: 'on the trunnion, outside the body, at both ends',
  tip: 'at the end that runs on the valve',
  mount: 'what goes through or holds the trunnion',
};

/**
 * A rocker from the side and from above; what is asked for is dimensioned and stands in the accent. One that is known
 * to have no retaining rings is drawn without.
 */
export function partDrawing(
  id: string,
  asked: AskedOfPart | undefined,
  { ringless = false }: { readonly ringless?: boolean } = {},
): Drawing {
  const shown = {
    roller: asked === 'roller-diameter' || asked === 'tip',
    hole: asked === 'hole-across-trunnion',
    rings: asked === 'rings',
    ringless,
    stud: asked === 'mount',
  };
  const seen =
    'A rocker from the side, valve end at the left and pushrod cup at the right, and below it the same from above with the trunnion across.';
  return {
    id,
    title:
      asked === undefined
        ? 'A rocker, from the side and from above'
        : `${asked in PART_SIZES ? 'Where to measure' : 'Where to look'}: ${TITLES[asked].toLowerCase()}`,
    desc: asked === undefined ? seen : `${seen} Marked is ${TITLES[asked].toLowerCase()}: ${WHERE[asked]}.`,
    viewBox: '0 0 320 300',
    toScale: false,
    svg:
      fromTheSide(shown) +
      fromAbove(shown) +
      (asked === undefined ? '' : element('g', { class: 'draw-asked' }, DIMENSIONS[asked]())) +
      label(4, 14, 'side', { soft: true }) +
      label(4, 182, 'from above', { soft: true }),
  };
}
