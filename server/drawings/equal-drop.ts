import { inSpoken } from '../../shared/quantities/authored.ts';
import { curve, type Point } from './curve.ts';
import { levelDimension } from './dimension.ts';
import type { Drawing } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

const MIDDLE = 160;
const BASE = 190;
const PEAK = 72;
/** The drop is drawn larger than .050 of a real lobe. */
const DROP = 26;
/** Half the base of the drawn bump. */
const HALF = 128;

const lift = (x: number): number => ((1 + Math.cos((Math.PI * (x - MIDDLE)) / HALF)) / 2) * (BASE - PEAK);
/** How far from the middle the bump is down by the drop. */
const AWAY = (HALF / Math.PI) * Math.acos(2 * (1 - DROP / (BASE - PEAK)) - 1);

/** Back by .050 on the usual dial of .100 in a turn: half a turn against the way it ran going up. */
const HAND_BACK = -Math.PI;

/** A small dial whose hand stands back by the drop. */
const dialAt = (x: number, hand: number) =>
  circle('draw-outline', x, 30, 17) +
  line('draw-moving', x, 30, x + 12 * Math.sin(hand), 30 - 12 * Math.cos(hand)) +
  circle('draw-solid', x, 30, 1.5);

/** The lifter's rise over the crank, read at the same drop on either side of its peak. */
export function equalDrop(id: string): Drawing {
  const points = Array.from({ length: 81 }, (_, step): Point => {
    const x = MIDDLE - HALF + (2 * HALF * step) / 80;
    return [x, BASE - lift(x)];
  });
  const [before, after] = [MIDDLE - AWAY, MIDDLE + AWAY];
  const level = PEAK + DROP;
  const read = (x: number) =>
    circle('draw-point', x, level, 4) + path('draw-dim', `M${at(x)} ${level + 6}V${BASE + 22}`);
  return {
    id,
    title: 'Equal drop on either side of the peak',
    desc: inSpoken(
      'The indicator stands on the lifter. Zero it at full lift, back up past the drop and come up again to .050 in under the peak: read the wheel. Go on over the peak, down to the same .050 in: read the wheel again. The centreline is midway between the two readings.',
    ),
    viewBox: '0 0 320 276',
    svg:
      line('draw-axis', 16, BASE, 304, BASE) +
      curve('draw-curve', points) +
      path(
        'draw-rule',
        `M${at(before - 44)} ${level}H${at(after + 44)}M${at(MIDDLE)} ${PEAK}H${at(after + 44)}`,
      ) +
      path('draw-centre', `M${MIDDLE} 52V${BASE + 30}`) +
      read(before) +
      read(after) +
      dialAt(before, HAND_BACK) +
      dialAt(MIDDLE, 0) +
      dialAt(after, HAND_BACK) +
      path('draw-dim', `M${at(after + 36)} ${PEAK - 16}V${PEAK}`, { 'marker-end': 'url(#arrow)' }) +
      path('draw-dim', `M${at(after + 36)} ${level + 16}V${level}`, { 'marker-end': 'url(#arrow)' }) +
      label(after + 44, level - 8, inSpoken('.050')) +
      label(MIDDLE, 66, 'peak', { anchor: 'middle', soft: true }) +
      levelDimension({ y: 232, from: before, to: MIDDLE, text: 'half', outline: BASE + 18 }) +
      levelDimension({ y: 232, from: MIDDLE, to: after, text: 'half', outline: BASE + 18 }) +
      label(before - 6, 252, 'read the wheel', { anchor: 'end', className: 'draw-text-moving' }) +
      label(after + 6, 252, 'and again', { className: 'draw-text-moving' }) +
      label(160, 271, 'overshot? back up ¼ turn, come up again', { anchor: 'middle', soft: true }),
    toScale: false,
    caption: 'Indicator on the lifter; the drop is drawn larger than it is',
  };
}
