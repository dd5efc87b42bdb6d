import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, label, line, path } from './svg.ts';

interface SpringStack {
  readonly installedHeight: number;
  readonly openHeight: number;
  readonly solidHeight: number;
  /** Negative where the coils would touch first. */
  readonly margin: number;
}

const SEAT = 222;
const TALLEST = 168;
const COILS = 6;
const HALF = 26;

/** A spring seen from the side: its near half coils in ink, its far ones lighter. */
function spring(middle: number, top: number): string {
  const pitch = (SEAT - top) / COILS;
  const near = Array.from({ length: COILS }, (_, coil) => {
    const y = top + coil * pitch;
    return `M${at(middle - HALF)} ${at(y + pitch * 0.15)}L${at(middle + HALF)} ${at(y + pitch * 0.65)}`;
  });
  const far = Array.from({ length: COILS - 1 }, (_, coil) => {
    const y = top + coil * pitch;
    return `M${at(middle + HALF)} ${at(y + pitch * 0.65)}L${at(middle - HALF)} ${at(y + pitch * 1.15)}`;
  });
  return path('draw-behind', far.join('')) + path('draw-outline', near.join(''));
}

function retainer(middle: number, underside: number): string {
  const [left, right] = [middle - HALF - 8, middle + HALF + 8];
  return path('draw-moving', `M${at(left)} ${at(underside - 9)}H${at(right)}V${at(underside)}H${at(left)}Z`);
}

/** A spring with the valve closed and at full lift, at one scale, with the room that is left before coil bind. */
export function springStack(data: SpringStack, { id, ruler }: DrawnFor): Drawing {
  const scale = TALLEST / Math.max(data.installedHeight, data.solidHeight);
  const y = (height: number) => SEAT - height * scale;
  const [closed, open] = [102, 222];
  const openTop = y(data.openHeight);
  const solid = y(data.solidHeight);
  const margin = ruler.figure(data.margin);
  return {
    id,
    title: 'Spring, closed and at full lift',
    desc: `Installed ${ruler.text(data.installedHeight)}, open ${ruler.text(data.openHeight)}, solid ${ruler.text(data.solidHeight)}: ${ruler.text(data.margin)} is left before coil bind.`,
    viewBox: '0 0 320 262',
    svg:
      path('draw-cut', `M22 ${SEAT}H298V${SEAT + 12}H22Z`) +
      line('draw-outline', 22, SEAT, 298, SEAT) +
      spring(closed, y(data.installedHeight)) +
      spring(open, Math.min(openTop, SEAT - 6)) +
      retainer(closed, y(data.installedHeight)) +
      retainer(open, Math.min(openTop, SEAT - 6)) +
      line('draw-limit', open - HALF - 8, solid, 268, solid) +
      label(278, Math.max(solid + 15, (openTop + solid) / 2 + 20), 'solid', { soft: true }) +
      uprightDimension({
        x: 30,
        from: SEAT,
        to: y(data.installedHeight),
        text: ruler.figure(data.installedHeight),
        outline: closed - HALF - 8,
      }) +
      uprightDimension({
        x: 152,
        from: SEAT,
        to: openTop,
        text: ruler.figure(data.openHeight),
        outline: open - HALF - 8,
        side: 'start',
      }) +
      uprightDimension({
        x: 272,
        from: openTop,
        to: solid,
        text: margin,
        outline: open + HALF + 8,
        side: 'start',
      }) +
      label(closed, 252, 'closed', { anchor: 'middle', soft: true }) +
      label(open, 252, 'full lift', { anchor: 'middle', soft: true }),
    toScale: true,
    table: {
      caption: 'Heights of the spring',
      columns: [{ label: 'What' }, { label: `Height, ${ruler.unit}`, number: true }],
      rows: [
        { cells: ['Installed', ruler.figure(data.installedHeight)] },
        { cells: ['At full lift', ruler.figure(data.openHeight)] },
        { cells: ['Solid', ruler.figure(data.solidHeight)] },
        { cells: ['Left before coil bind', margin] },
      ],
    },
  };
}
