import { type Anchor, at, label, path } from './svg.ts';

/** Room that two arrowheads and a little line between them need. */
const ARROWS = 30;
/** How far a dimension line runs past its arrows when they stand outside. */
const OUTSIDE = 16;

const ARROW_ENDS = { 'marker-start': 'url(#arrow)', 'marker-end': 'url(#arrow)' };

interface Upright {
  /** Where the dimension line stands, and the two heights it goes between. */
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** What is measured, in a line above its value, where nothing else on the drawing says it. */
  readonly name?: string;
  /** Where the outline that is measured ends; the extension lines begin just past it. */
  readonly outline: number;
  readonly side?: Anchor;
}

/**
 * An upright dimension after ISO 129-1: extension lines that begin a little off the outline and end a little past the
 * dimension line, filled arrowheads inside where there is room and outside where there is not, the value beside
 * the line so that it reads level on a phone.
 */
export function uprightDimension({ x, from, to, text, name, outline, side = 'start' }: Upright): string {
  const high = Math.min(from, to);
  const low = Math.max(from, to);
  const direction = x >= outline ? 1 : -1;
  const extension = (y: number) => `M${at(outline + 2 * direction)} ${at(y)}H${at(x + 4 * direction)}`;
  const inside = low - high >= ARROWS;
  const arrows = inside
    ? path('draw-dim', `M${at(x)} ${at(high)}V${at(low)}`, ARROW_ENDS)
    : path('draw-dim', `M${at(x)} ${at(high - OUTSIDE)}V${at(high)}`, { 'marker-end': 'url(#arrow)' }) +
      path('draw-dim', `M${at(x)} ${at(low + OUTSIDE)}V${at(low)}`, { 'marker-end': 'url(#arrow)' });
  const middle = (high + low) / 2 + 4.5;
  const textX = side === 'start' ? x + 6 : side === 'end' ? x - 6 : x;
  return (
    path('draw-dim', extension(high) + extension(low)) +
    arrows +
    (name === undefined ? '' : label(textX, middle - 16, name, { anchor: side, soft: true })) +
    label(textX, middle, text, { anchor: side })
  );
}

/** A level dimension, its value above the line. */
export function levelDimension(given: {
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly outline: number;
}): string {
  const { y, text, outline } = given;
  const left = Math.min(given.from, given.to);
  const right = Math.max(given.from, given.to);
  const direction = y >= outline ? 1 : -1;
  const extension = (x: number) => `M${at(x)} ${at(outline + 2 * direction)}V${at(y + 4 * direction)}`;
  const inside = right - left >= ARROWS;
  const arrows = inside
    ? path('draw-dim', `M${at(left)} ${at(y)}H${at(right)}`, ARROW_ENDS)
    : path('draw-dim', `M${at(left - OUTSIDE)} ${at(y)}H${at(left)}`, { 'marker-end': 'url(#arrow)' }) +
      path('draw-dim', `M${at(right + OUTSIDE)} ${at(y)}H${at(right)}`, { 'marker-end': 'url(#arrow)' });
  return (
    path('draw-dim', extension(left) + extension(right)) +
    arrows +
    label((left + right) / 2, y - 5, text, { anchor: 'middle' })
  );
}
