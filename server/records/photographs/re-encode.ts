import sharp from 'sharp';
import { Failure } from '../../problems/failure.ts';

/** Bytes taken from a phone at the most; a large photograph of today stays below. */
export const MOST_BYTES = 12 * 1024 * 1024;
/** Pixels at the most. A small file can claim billions: it is refused by its header, before anything is unpacked. */
const MOST_PIXELS = 60_000_000;
const LONGEST_SIDE = 1600;

/** What a file is, by its first bytes and never by its name or what the sender says of it. */
function kindOfImage(bytes: Buffer): 'jpeg' | 'png' | 'webp' | undefined {
  if (bytes.length < 16) return undefined;
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (bytes.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])))
    return 'png';
  if (bytes.toString('latin1', 0, 4) === 'RIFF' && bytes.toString('latin1', 8, 12) === 'WEBP') return 'webp';
  return undefined;
}

export interface CleanImage {
  readonly jpeg: Buffer;
  readonly width: number;
  readonly height: number;
}

/**
 * Makes a photograph again: turned as it was held, no larger than needed, and without anything the phone wrote
 * into it (place, time, device).
 */
export async function reEncode(bytes: Buffer): Promise<CleanImage> {
  if (bytes.length > MOST_BYTES) {
    throw new Failure('body-too-large', `a photograph may have ${MOST_BYTES / 1024 / 1024} MB at the most`);
  }
  if (kindOfImage(bytes) === undefined) {
    throw new Failure(
      'media-type-not-taken',
      'this is no photograph: JPEG, PNG or WebP is taken, told by its content',
    );
  }
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error', pages: 1 })
      .rotate()
      .resize({ width: LONGEST_SIDE, height: LONGEST_SIDE, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 80 })
      .timeout({ seconds: 10 })
      .toBuffer({ resolveWithObject: true });
    return { jpeg: data, width: info.width, height: info.height };
  } catch (error) {
    throw new Failure(
      'media-type-not-taken',
      'this photograph can’t be read, or is too large when unpacked',
      { cause: error },
    );
  }
}
