import sharp from 'sharp';
import { type Asset, picture } from './asset.ts';

/** A drawn mark: a dial with its hand at 1 o'clock. */
const DRAWN =
  '<circle cx="16" cy="16" r="13" fill="#fff" stroke="#1b2a38" stroke-width="2.5"/><path d="M16 16 L22 6" stroke="#a3400f" stroke-width="3" stroke-linecap="round"/>';

export const MARK = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32">${DRAWN}</svg>`;

/** The ground behind the mark on a phone's own screen; also the colour of paper in the style sheet. */
export const GROUND = '#f5f6f2';

/**
 * The mark on a ground of its own, for phones that cut icons to a shape: what may be cut is all beyond a circle of
 * 40 % of the width (W3C, Web Application Manifest, "maskable").
 */
const ON_GROUND = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" fill="${GROUND}"/><g transform="translate(16 16) scale(.85) translate(-16 -16)">${DRAWN}</g></svg>`;

async function drawn(name: string, size: number): Promise<Asset> {
  // The drawing is 32 wide at 72 dpi.
  const density = (72 * size) / 32;
  const png = await sharp(Buffer.from(ON_GROUND), { density })
    .resize(size, size)
    .png({ palette: true })
    .toBuffer();
  return picture(`${name}-${size}`, png);
}

/** The mark in the sizes that a phone's screen asks for. */
export async function drawnMarks(): Promise<{ readonly touch: Asset; readonly screen: readonly Asset[] }> {
  const [touch, small, large] = await Promise.all([
    drawn('benchcall', 180),
    drawn('benchcall', 192),
    drawn('benchcall', 512),
  ]);
  return { touch, screen: [small, large] };
}
