import { inSpoken } from '../../shared/quantities/authored.ts';
import type { Drawing } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

/** Where the indicator's plunger rests: on the lifter for the lobe, on the retainer for the valve. */
type IndicatorPlace = 'lifter' | 'retainer';

const DIAL = { y: 42, r: 27 } as const;

/** A dial indicator, its plunger in the accent because it is what moves. */
function indicator(x: number, tip: number): string {
  const sleeve = DIAL.y + DIAL.r;
  return (
    circle('draw-outline', x, DIAL.y, DIAL.r) +
    circle('draw-behind', x, DIAL.y, DIAL.r - 6) +
    line('draw-outline', x, DIAL.y, x + 11, DIAL.y - 13) +
    path('draw-outline', `M${at(x - 6)} ${at(sleeve)}V${at(sleeve + 24)}H${at(x + 6)}V${at(sleeve)}`) +
    path('draw-moving', `M${at(x)} ${at(sleeve + 24)}V${at(tip)}`) +
    circle('draw-solid', x, tip - 3, 3)
  );
}

/** Which way the part goes on opening. */
const moves = (x: number, from: number, to: number): string =>
  path('draw-dim', `M${at(x)} ${at(from)}V${at(to)}`, { 'marker-end': 'url(#arrow)' });

function onLifter(): string {
  const x = 118;
  const top = 142;
  const bottom = 202;
  const bore = (left: number) => `M${at(left)} 150H${at(left + 26)}V196H${at(left)}Z`;
  return (
    path('draw-cut', bore(x - 46) + bore(x + 20)) +
    path('draw-outline', `M${at(x - 18)} ${top}H${at(x + 18)}V${bottom}H${at(x - 18)}Z`) +
    path(
      'draw-behind',
      `M${at(x - 34)} 238A34 34 0 0 0 ${at(x + 34)} 238C${at(x + 32)} 216 ${at(x + 14)} ${bottom} ${at(x)} ${bottom}C${at(x - 14)} ${bottom} ${at(x - 32)} 216 ${at(x - 34)} 238Z`,
    ) +
    path('draw-centre', `M${at(x)} 10V272`) +
    indicator(x, top) +
    moves(x + 58, 196, 156) +
    label(x + 66, 180, 'the lifter rises,', {}) +
    label(x + 66, 197, 'the hand runs', {}) +
    label(x + 66, 214, 'clockwise', {}) +
    label(x + 40, 44, 'in line with the', { soft: true }) +
    label(x + 40, 60, 'lifter’s bore', { soft: true }) +
    label(x + 66, 140, 'on the lifter body', { soft: true }) +
    label(x, 290, 'lobe', { anchor: 'middle', soft: true })
  );
}

function onRetainer(): string {
  const stem = 96;
  const x = 130;
  const retainer = 158;
  const seat = 240;
  const coil = (turn: number) =>
    `M${at(stem - 24)} ${at(176 + turn * 16)}L${at(stem + 24)} ${at(184 + turn * 16)}`;
  return (
    path('draw-cut', `M${at(stem - 46)} ${seat}H${at(stem + 46)}V${seat + 12}H${at(stem - 46)}Z`) +
    path('draw-behind', [0, 1, 2, 3].map(coil).join('')) +
    path(
      'draw-outline',
      `M${at(stem - 4)} 144V${seat + 30}M${at(stem + 4)} 144V${seat + 30}M${at(stem - 4)} 144H${at(stem + 4)}`,
    ) +
    path(
      'draw-outline',
      `M${at(stem - 44)} ${retainer}H${at(stem + 44)}V${retainer + 9}H${at(stem + 24)}V${retainer + 18}H${at(stem - 24)}V${retainer + 9}H${at(stem - 44)}Z`,
    ) +
    path('draw-behind', `M6 116C30 96 52 104 72 118L${at(stem)} 124`) +
    circle('draw-behind', stem, 132, 12) +
    path('draw-centre', `M${at(stem)} 96V${seat + 44}M${at(x)} 8V${seat + 20}`) +
    indicator(x, retainer) +
    moves(x + 46, 176, 220) +
    label(x + 54, 190, 'the valve moves', {}) +
    label(x + 54, 207, 'away, the hand', {}) +
    label(x + 54, 224, 'runs backwards', {}) +
    label(x + 40, 36, 'parallel to the', { soft: true }) +
    label(x + 40, 52, 'stem, from front', { soft: true }) +
    label(x + 40, 68, 'and from side', { soft: true }) +
    label(x + 48, 128, 'on the retainer’s', { soft: true }) +
    label(x + 48, 144, 'flat face', { soft: true }) +
    label(stem, 290, 'valve', { anchor: 'middle', soft: true })
  );
}

const SAID: Readonly<Record<IndicatorPlace, { title: string; desc: string; before: string }>> = {
  lifter: {
    title: 'The indicator on the lifter, for the lobe',
    desc: 'The plunger stands on the lifter body, in line with its bore. On opening the lifter rises and pushes the plunger in; the hand runs clockwise.',
    before:
      'Before zeroing push the plunger in by .050 to .100 in; the lobe lift and .050 in are still to come.',
  },
  retainer: {
    title: 'The indicator on the retainer, for the valve',
    desc: 'The plunger stands on the flat face of the retainer, parallel to the valve stem seen from the front and from the side, clear of the rocker. On opening the valve moves away from it; the hand runs backwards.',
    before:
      'Before zeroing push the plunger in by the full lift and .050 in more, or the tip leaves the retainer and the reading stops short.',
  },
};

/** Where the plunger rests and which way the hand runs, before the first pass is read. */
export function indicatorPlace(place: IndicatorPlace, id: string): Drawing {
  const { title, desc } = SAID[place];
  const before = inSpoken(SAID[place].before);
  return {
    id,
    title,
    desc: `${desc} ${before}`,
    viewBox: '0 0 320 298',
    svg: place === 'lifter' ? onLifter() : onRetainer(),
    toScale: false,
    caption: before,
  };
}
