import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import { build } from 'esbuild';
import { readStyles } from '../../../views/styles/read.ts';

interface Asset {
  readonly href: string;
  readonly type: string;
  readonly body: Buffer;
  /** The same bytes in the codings that a browser may accept, smallest first. */
  readonly packed: readonly { readonly coding: 'br' | 'gzip'; readonly body: Buffer }[];
}

export interface Assets {
  readonly style: Asset;
  readonly script: Asset;
  readonly icon: Asset;
}

const packGzip = promisify(gzip);
const packBrotli = promisify(brotliCompress);
/** Packed once at each start: one step below the slowest costs a few bytes and a fifth of the time. */
const QUALITY = 10;

async function asset(name: string, ending: string, type: string, text: string): Promise<Asset> {
  const hash = createHash('sha256').update(text).digest('hex').slice(0, 16);
  const body = Buffer.from(text);
  const [br, gz] = await Promise.all([
    packBrotli(body, { params: { [constants.BROTLI_PARAM_QUALITY]: QUALITY } }),
    packGzip(body, { level: constants.Z_BEST_COMPRESSION }),
  ]);
  return {
    href: `/assets/${name}.${hash}.${ending}`,
    type,
    body,
    packed: [
      { coding: 'br', body: br },
      { coding: 'gzip', body: gz },
    ],
  };
}

async function bundle(): Promise<string> {
  const result = await build({
    entryPoints: [fileURLToPath(new URL('../../../views/assets/page.ts', import.meta.url))],
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    target: 'es2022',
    legalComments: 'none',
  });
  return result.outputFiles[0]?.text ?? '';
}

/** A drawn mark: a dial with its hand at 1 o'clock. */
const ICON =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><circle cx="16" cy="16" r="13" fill="#fff" stroke="#1b2a38" stroke-width="2.5"/><path d="M16 16 L22 6" stroke="#a3400f" stroke-width="3" stroke-linecap="round"/></svg>';

/** What pages link to, named by content so that browsers may keep it for ever. Built once at start. */
export async function loadAssets(): Promise<Assets> {
  const [styles, scripts] = await Promise.all([readStyles(), bundle()]);
  const [style, script, icon] = await Promise.all([
    asset('benchcall', 'css', 'text/css; charset=utf-8', styles),
    asset('benchcall', 'js', 'text/javascript; charset=utf-8', scripts),
    asset('benchcall', 'svg', 'image/svg+xml', ICON),
  ]);
  return { style, script, icon };
}
