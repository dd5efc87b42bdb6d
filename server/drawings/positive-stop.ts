import type { Drawing } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

const MIDDLE = 122;
const BORE = { left: 62, right: 182, deck: 96, bottom: 250 } as const;

/** Head above the deck with the plug hole in it, cut; the stop is screwed in and hangs into the bore. */
const head =
  path(
    'draw-cut',
    `M30 54H${MIDDLE - 13}V${BORE.deck}H30ZM${MIDDLE + 13} 54H214V${BORE.deck}H${MIDDLE + 13}Z`,
  ) +
  path(
    'draw-cut',
    `M30 ${BORE.deck}H${BORE.left}V${BORE.bottom}H30ZM${BORE.right} ${BORE.deck}H214V${BORE.bottom}H${BORE.right}Z`,
  );

const stop =
  path('draw-outline', `M${MIDDLE - 20} 30H${MIDDLE + 20}V50H${MIDDLE - 20}Z`) +
  path(
    'draw-outline',
    `M${MIDDLE - 11} 50V${BORE.deck + 4}H${MIDDLE - 6}V136H${MIDDLE + 6}V${BORE.deck + 4}H${MIDDLE + 11}V50`,
  );

const piston =
  path('draw-moving', `M${BORE.left + 3} 137H${BORE.right - 3}V186H${BORE.left + 3}Z`) +
  path('draw-behind', `M${BORE.left + 3} 146H${BORE.right - 3}M${BORE.left + 3} 153H${BORE.right - 3}`) +
  circle('draw-outline', MIDDLE, 170, 8) +
  path(
    'draw-behind',
    `M${at(MIDDLE - 5)} 178L${at(MIDDLE + 12)} 246M${at(MIDDLE + 5)} 176L${at(MIDDLE + 24)} 244`,
  );

/** The stop in the plug hole with the piston against it, short of its top. */
export function positiveStop(id: string): Drawing {
  return {
    id,
    title: 'The stop in the plug hole, the piston against it',
    desc: 'A stop is screwed into the plug hole and hangs into the cylinder. The piston comes up and touches it short of its top, once turned one way and once turned the other. Plugs out, turned gently by hand at the crank bolt; never with the starter.',
    viewBox: '0 0 320 276',
    svg:
      head +
      stop +
      piston +
      path('draw-dim', 'M240 200V150', { 'marker-end': 'url(#arrow)' }) +
      label(MIDDLE + 30, 44, 'stop in the plug hole') +
      label(224, 130, 'touches here') +
      path('draw-dim', `M222 134L${MIDDLE + 14} 137`) +
      label(226, 218, 'piston, by') +
      label(226, 234, 'hand, gently') +
      label(160, 270, 'plugs out; take the stop out again', { anchor: 'middle', soft: true }),
    toScale: false,
  };
}
