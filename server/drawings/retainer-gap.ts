import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, label, line, path } from './svg.ts';

interface RetainerGap {
  /** Retainer's underside to the seal, valve closed. */
  readonly closed: number;
  readonly netLift: number;
  /** What is left at full lift; negative where they meet first. */
  readonly margin: number;
}

const TALLEST = 120;
const SEAL = 176;
const GUIDE = 226;

function guideAndSeal(middle: number): string {
  const left = middle - 20;
  return (
    path('draw-cut', `M${at(left + 6)} ${SEAL + 18}H${at(middle + 14)}V${GUIDE}H${at(left + 6)}Z`) +
    path('draw-outline', `M${at(left)} ${SEAL}H${at(middle + 20)}V${SEAL + 24}H${at(left)}Z`)
  );
}

function retainer(middle: number, underside: number): string {
  return (
    path('draw-centre', `M${at(middle)} ${at(underside - 34)}V${GUIDE + 8}`) +
    path(
      'draw-moving',
      `M${at(middle - 40)} ${at(underside - 20)}H${at(middle + 40)}V${at(underside - 10)}H${at(middle + 24)}V${at(underside)}H${at(middle - 24)}V${at(underside - 10)}H${at(middle - 40)}Z`,
    )
  );
}

/** Retainer over the seal with the valve closed and at full lift, at one scale along the valve. */
export function retainerGap(data: RetainerGap, { id, ruler }: DrawnFor): Drawing {
  const scale = TALLEST / Math.max(data.closed, data.closed - data.margin, 1e-9);
  const y = (gap: number) => SEAL - gap * scale;
  const [closed, open] = [76, 216];
  return {
    id,
    title: 'Retainer to seal, closed and at full lift',
    desc: `Closed the retainer stands ${ruler.text(data.closed)} above the seal; a lift of ${ruler.text(data.netLift)} leaves ${ruler.text(data.margin)}.`,
    viewBox: '0 0 320 262',
    svg:
      guideAndSeal(closed) +
      guideAndSeal(open) +
      line('draw-outline', 24, GUIDE, 296, GUIDE) +
      retainer(closed, y(data.closed)) +
      retainer(open, y(data.margin)) +
      uprightDimension({
        x: 128,
        from: SEAL,
        to: y(data.closed),
        text: ruler.figure(data.closed),
        outline: closed + 24,
      }) +
      uprightDimension({
        x: 270,
        from: SEAL,
        to: y(data.margin),
        text: ruler.figure(data.margin),
        outline: open + 24,
      }) +
      label(closed + 46, y(data.closed) - 10, 'retainer', { soft: true }) +
      label(closed + 26, SEAL + 16, 'seal', { soft: true }) +
      label(closed, 252, 'closed', { anchor: 'middle', soft: true }) +
      label(open, 252, 'full lift', { anchor: 'middle', soft: true }),
    toScale: true,
    caption: 'Retainer to seal, along the valve',
    table: {
      caption: 'Retainer to seal',
      columns: [{ label: 'Where' }, { label: `Gap, ${ruler.unit}`, number: true }],
      rows: [
        { cells: ['Closed', ruler.figure(data.closed)] },
        { cells: ['Full lift', ruler.figure(data.margin)] },
      ],
    },
  };
}
