import { circle, line, path } from './svg.ts';

/** Where the parts of the drawn rocker lie; a neutral shape, no maker's. */
export const PIVOT = { x: 176, y: 78 } as const;
export const ROLLER = { x: 62, y: 92, r: 20 } as const;
export const CUP = { x: 258, y: 84 } as const;
export const FROM_ABOVE = {
  middle: 228,
  hole: 12,
  body: { from: 190, to: 266, edge: 204 },
  trunnion: { from: 172, to: 284, left: 160, right: 192 },
} as const;

/** What is to be looked at stands in the accent. */
interface Shown {
  readonly roller: boolean;
  readonly hole: boolean;
  readonly rings: boolean;
  /** It has none: the bearings are flush with the body. */
  readonly ringless: boolean;
  readonly stud: boolean;
}

const as = (asked: boolean, otherwise = 'draw-outline') => (asked ? 'draw-moving' : otherwise);

/** The rocker from the side: valve at the left, pushrod at the right. */
export function fromTheSide(shown: Shown): string {
  const body =
    'M62 72C92 66 128 46 176 46C214 46 244 58 272 72V98C246 104 214 110 176 110C140 110 108 106 78 104';
  return [
    path(as(shown.stud, 'draw-behind'), 'M167 30V128M185 30V128'),
    path('draw-outline', body),
    circle(as(shown.roller), ROLLER.x, ROLLER.y, ROLLER.r),
    circle('draw-outline', ROLLER.x, ROLLER.y, 6),
    circle('draw-outline', PIVOT.x, PIVOT.y, 18),
    path('draw-outline', 'M248 101A10 10 0 0 1 268 98'),
    path('draw-behind', 'M254 103V136M264 103V136'),
    path('draw-behind', 'M56 112V136M68 112V136'),
    line('draw-centre', PIVOT.x - 26, PIVOT.y, PIVOT.x + 26, PIVOT.y),
    line('draw-centre', PIVOT.x, PIVOT.y - 26, PIVOT.x, PIVOT.y + 26),
  ].join('');
}

/** The same from above, with the trunnion across it and the hole through the trunnion. */
export function fromAbove(shown: Shown): string {
  const { trunnion, middle, hole } = FROM_ABOVE;
  const { left, right, from, to } = trunnion;
  return [
    path('draw-outline', `M${left} 190V${from}H${right}V190M${left} 266V${to}H${right}V266`),
    shown.ringless
      ? ''
      : path(
          as(shown.rings),
          `M${left - 5} 182H${right + 5}V186H${left - 5}ZM${left - 5} 270H${right + 5}V274H${left - 5}Z`,
        ),
    path(
      'draw-outline',
      'M50 204H104L146 190H204L240 208H274V248H240L204 266H146L104 252H50V242H104V214H50Z',
    ),
    path(as(shown.roller), 'M42 214H82V242H42Z'),
    circle(as(shown.hole || shown.stud), PIVOT.x, middle, hole),
    circle('draw-outline', CUP.x, middle, 8),
    line('draw-centre', 30, middle, 288, middle),
    line('draw-centre', PIVOT.x, 166, PIVOT.x, 290),
  ].join('');
}
