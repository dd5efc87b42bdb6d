import { create } from 'qrcode';

/** Light modules that ISO/IEC 18004 asks for on every side. */
const QUIET = 4;

interface QrCode {
  readonly viewBox: string;
  /** One path, a square for each dark module; made of numbers alone. */
  readonly dark: string;
  readonly paper: string;
}

/** A link as a QR code for the camera of a phone. */
export function qrCode(text: string): QrCode {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const { size } = modules;
  const squares: string[] = [];
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      if (modules.get(row, column) !== 0) squares.push(`M${column + QUIET} ${row + QUIET}h1v1h-1z`);
    }
  }
  const side = size + 2 * QUIET;
  return { viewBox: `0 0 ${side} ${side}`, dark: squares.join(''), paper: `M0 0H${side}V${side}H0Z` };
}
