import { at, label, line, path } from './svg.ts';

/*
 * One valve standing upright on a sheet: spring, seal, seat, retainer, head and the piston below it, each by the
 * heights that it is given. Widths are drawn, heights are to scale.
 */

export const HALF = 20;
const COILS = 6;
/** A pocket's wall: how deep it is cut is not known. */
const WALL = 12;

export function spring(x: number, top: number, seat: number): string {
  const pitch = (seat - top) / COILS;
  const near = Array.from({ length: COILS }, (_, coil) => {
    const y = top + coil * pitch;
    return `M${at(x - HALF)} ${at(y + pitch * 0.2)}L${at(x + HALF)} ${at(y + pitch * 0.7)}`;
  });
  return path('draw-behind', near.join(''));
}

/** Seal and guide stand still; the seal is drawn narrower than the spring around it. */
export function sealAt(x: number, top: number, seat: number): string {
  return path('draw-outline', `M${at(x - 9)} ${at(seat)}V${at(top)}H${at(x + 9)}V${at(seat)}`);
}

export const springSeat = (x: number, seat: number): string =>
  path(
    'draw-cut',
    `M${at(x - 34)} ${at(seat)}H${at(x - 4)}V${at(seat + 10)}H${at(x - 34)}ZM${at(x + 4)} ${at(seat)}H${at(x + 34)}V${at(seat + 10)}H${at(x + 4)}Z`,
  );

/** Retainer, stem and head; the stem is broken off below the spring seat. */
export function valve(x: number, retainerUnderside: number, seat: number, head: number): string {
  return (
    path(
      'draw-moving',
      `M${at(x - HALF - 4)} ${at(retainerUnderside - 8)}H${at(x + HALF + 4)}V${at(retainerUnderside)}H${at(x - HALF - 4)}Z`,
    ) +
    path(
      'draw-moving',
      `M${at(x)} ${at(retainerUnderside)}V${at(seat + 14)}M${at(x)} ${at(seat + 26)}V${at(head - 8)}`,
    ) +
    path('draw-moving', `M${at(x - 22)} ${at(head)}H${at(x + 22)}L${at(x + 6)} ${at(head - 8)}H${at(x - 6)}Z`)
  );
}

/** The piston where it comes closest: its flat crown, or the floor of its pocket with the walls beside it. */
export const pistonAt = (x: number, floor: number, kind: 'pocket' | 'flat' | undefined): string =>
  kind === 'pocket'
    ? path(
        'draw-cut',
        `M${at(x - 44)} ${at(floor - WALL)}H${at(x - 32)}V${at(floor)}H${at(x + 32)}V${at(floor - WALL)}H${at(x + 44)}V${at(floor + 10)}H${at(x - 44)}Z`,
      )
    : path('draw-cut', `M${at(x - 34)} ${at(floor)}H${at(x + 34)}V${at(floor + 10)}H${at(x - 34)}Z`);

/** How near a part may come: a broken line over the part that it is the limit of. */
export const limitAt = (x: number, y: number, half: number): string =>
  line('draw-limit', x - half, y, x + half, y);

/** A name beside a part, with a line that leads to it. */
export const named = (from: number, x: number, y: number, name: string): string =>
  line('draw-dim', from, y, x - 3, y) + label(x, y + 4.5, name, { soft: true });
