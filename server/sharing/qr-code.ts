import { create } from 'qrcode';
import type { DrawingData } from '../../views/parts/drawing.examples.ts';

/** Light modules that ISO/IEC 18004 asks for on every side. */
const QUIET = 4;

/** A link as a QR code: one path, a square for each dark module. */
export function qrCode(text: string, id: string): DrawingData {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const { size } = modules;
  const squares: string[] = [];
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      if (modules.get(row, column) !== 0) squares.push(`M${column + QUIET} ${row + QUIET}h1v1h-1z`);
    }
  }
  const side = size + 2 * QUIET;
  return {
    id,
    title: 'The link as a QR code',
    desc: 'A phone’s camera opens the link from this code. The same link stands beside it in words.',
    viewBox: `0 0 ${side} ${side}`,
    svg: `<path class="code-paper" d="M0 0H${side}V${side}H0Z"/><path class="code-ink" shape-rendering="crispEdges" d="${squares.join('')}"/>`,
    toScale: false,
    caption: 'For the camera of a phone',
  };
}
