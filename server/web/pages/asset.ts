import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

/** A file that pages link to. */
export interface Asset {
  readonly href: string;
  readonly type: string;
  readonly body: Buffer;
  /** The same bytes in the codings that a browser may accept, smallest first. */
  readonly packed: readonly { readonly coding: 'br' | 'gzip'; readonly body: Buffer }[];
}

const packGzip = promisify(gzip);
const packBrotli = promisify(brotliCompress);
/** Packed once at each start: one step below the slowest costs a few bytes and a fifth of the time. */
const QUALITY = 10;

export const hashOfContent = (content: string | Buffer): string =>
  createHash('sha256').update(content).digest('hex').slice(0, 16);

async function packed(body: Buffer): Promise<Asset['packed']> {
  const [br, gz] = await Promise.all([
    packBrotli(body, { params: { [constants.BROTLI_PARAM_QUALITY]: QUALITY } }),
    packGzip(body, { level: constants.Z_BEST_COMPRESSION }),
  ]);
  return [
    { coding: 'br', body: br },
    { coding: 'gzip', body: gz },
  ];
}

/** A text at an address of its own that stays the same whatever it holds. */
export async function assetAt(href: string, type: string, text: string): Promise<Asset> {
  const body = Buffer.from(text);
  return { href, type, body, packed: await packed(body) };
}

/** A text at an address that changes with its content. */
export const asset = (name: string, ending: string, type: string, text: string): Promise<Asset> =>
  assetAt(`/assets/${name}.${hashOfContent(text)}.${ending}`, type, text);

/** A picture likewise; its bytes are packed already. */
export const picture = (name: string, body: Buffer): Asset => ({
  href: `/assets/${name}.${hashOfContent(body)}.png`,
  type: 'image/png',
  body,
  packed: [],
});
