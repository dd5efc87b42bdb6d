import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { readStyles } from '../../../views/styles/read.ts';
import { type Asset, asset, assetAt, hashOfContent } from './asset.ts';
import { manifestText } from './manifest.ts';
import { drawnMarks, MARK } from './mark.ts';

export interface Assets {
  readonly style: Asset;
  readonly script: Asset;
  readonly icon: Asset;
  readonly touchIcon: Asset;
  readonly screenIcons: readonly Asset[];
  readonly manifest: Asset;
  /** What keeps the builder's pages on the phone. It has one address for ever, by which browsers find a newer one. */
  readonly worker: Asset;
}

/** The page that the worker shows in place of one that is not on the phone. */
export const NO_SIGNAL = '/bench/no-signal';

async function bundle(file: string, known: Readonly<Record<string, unknown>> = {}): Promise<string> {
  const result = await build({
    entryPoints: [fileURLToPath(new URL(`../../../views/assets/${file}`, import.meta.url))],
    bundle: true,
    minify: true,
    write: false,
    format: file === 'page.ts' ? 'esm' : 'iife',
    target: 'es2022',
    legalComments: 'none',
    define: Object.fromEntries(Object.entries(known).map(([name, value]) => [name, JSON.stringify(value)])),
  });
  return result.outputFiles[0]?.text ?? '';
}

async function workerOf(files: readonly Asset[]): Promise<Asset> {
  const hrefs = files.map(({ href }) => href);
  const text = await bundle('worker/worker.ts', {
    ASSETS: hrefs,
    NO_SIGNAL,
    VERSION: hashOfContent(hrefs.join(' ')),
  });
  return assetAt('/bench-worker.js', 'text/javascript; charset=utf-8', text);
}

/** What pages link to, named by content so that browsers may keep it for ever. Built once at start. */
export async function loadAssets(): Promise<Assets> {
  const [styles, scripts, marks] = await Promise.all([readStyles(), bundle('page.ts'), drawnMarks()]);
  const [style, script, icon] = await Promise.all([
    asset('benchcall', 'css', 'text/css; charset=utf-8', styles),
    asset('benchcall', 'js', 'text/javascript; charset=utf-8', scripts),
    asset('benchcall', 'svg', 'image/svg+xml', MARK),
  ]);
  const [manifest, worker] = await Promise.all([
    asset('benchcall', 'webmanifest', 'application/manifest+json', manifestText(icon, marks.screen)),
    workerOf([style, script, icon]),
  ]);
  return { style, script, icon, touchIcon: marks.touch, screenIcons: marks.screen, manifest, worker };
}
