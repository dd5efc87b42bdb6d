import sharp from 'sharp';
import { type CleanImage, reEncode } from '../records/photographs/re-encode.ts';

/** The underside of an arm with its cast number, drawn with strokes alone: no font has to be there. */
const PICTURE = `<svg xmlns="http://www.w3.org/2000/svg" width="960" height="640" viewBox="0 0 480 320">
<rect width="480" height="320" fill="#8d8f8a"/>
<path d="M0 230L480 190V320H0Z" fill="#75776f"/>
<path d="M40 150C70 96 160 74 236 84C320 94 410 118 442 150C452 168 438 192 410 196C330 204 280 236 216 240C140 244 60 222 40 190Z" fill="#b9bcb8" stroke="#55584f" stroke-width="4"/>
<circle cx="214" cy="160" r="40" fill="#d9dbd6" stroke="#55584f" stroke-width="4"/>
<circle cx="214" cy="160" r="20" fill="#4a4c45"/>
<circle cx="406" cy="160" r="26" fill="#e4e5e1" stroke="#55584f" stroke-width="4"/>
<circle cx="78" cy="170" r="14" fill="#4a4c45"/>
<g fill="none" stroke="#43463e" stroke-width="7" stroke-linecap="round">
<path d="M290 128V172M290 150H314M314 128V172"/>
<path d="M350 172V128L330 158H360"/>
</g>
</svg>`;

/** The demo's photograph, made again like any other. */
export async function demoPhotograph(): Promise<CleanImage> {
  return reEncode(await sharp(Buffer.from(PICTURE)).png().toBuffer());
}
