import { readdir, readFile } from 'node:fs/promises';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { STYLE_SHEETS } from '../../views/styles/order.ts';
import { readStyles } from '../../views/styles/read.ts';
import { contrast } from '../tools/contrast.ts';
import { readPalette } from '../tools/palette.ts';

const folder = new URL('../../views/styles/', import.meta.url);
const palette = await readPalette();

const GROUNDS = ['--paper', '--sheet'];
const TEXTS = ['--ink', '--ink-soft', '--act', '--act-strong', '--good', '--unsure', '--bad'];

describe('contrast', () => {
  it('follows the published definition', () => {
    // WCAG 2.2, definition of contrast ratio: ranges from 1 to 21; black on white is its end.
    expect(contrast('#000', '#ffffff')).toBeCloseTo(21, 10);
    // W3C, Understanding SC 1.4.3: #777777 on white is 4.47:1 and does not meet 4.5:1.
    expect(contrast('#777777', '#fff')).toBeCloseTo(4.478, 2);
  });

  for (const scheme of ['light', 'dark'] as const) {
    const ratio = (one: string, other: string) => {
      const colours = palette[scheme];
      return contrast(colours.get(one) ?? 'missing', colours.get(other) ?? 'missing');
    };

    it.each(TEXTS.flatMap((text) => GROUNDS.map((ground) => [text, ground] as const)))(
      `${scheme}: %s on %s reads at 4.5:1 (SC 1.4.3)`,
      (text, ground) => expect(ratio(text, ground)).toBeGreaterThanOrEqual(4.5),
    );

    it.each([
      ['--on-act', '--act'],
      ['--on-act', '--act-strong'],
      ['--act', '--act-wash'],
      ['--ink', '--act-wash'],
      ['--ink-soft', '--act-wash'],
      ['--ink-soft', '--unsure-wash'],
      ['--bad', '--unsure-wash'],
      ['--bad', '--bad-wash'],
    ])(`${scheme}: %s on %s reads at 4.5:1 (SC 1.4.3)`, (text, ground) => {
      expect(ratio(text, ground)).toBeGreaterThanOrEqual(4.5);
    });

    it.each(GROUNDS)(`${scheme}: a line that carries meaning stands at 3:1 on %s (SC 1.4.11)`, (ground) => {
      expect(ratio('--line', ground)).toBeGreaterThanOrEqual(3);
    });
  }
});

describe('style sheets', () => {
  it('are all joined, each once', async () => {
    const files = (await readdir(folder)).filter((file) => file.endsWith('.css'));
    expect([...STYLE_SHEETS].sort()).toEqual(files.sort());
  });

  it('name raw values only where meanings are given', async () => {
    for (const name of STYLE_SHEETS) {
      if (name === 'values.css' || name === 'meanings.css') continue;
      const css = (await readFile(new URL(name, folder), 'utf8')).replace('--paper: var(--raw-white);', '');
      expect(css, name).not.toMatch(/#[0-9a-f]{3,8}\b(?!\))|--raw-|rgb\(|hsl\(/i);
    }
  });

  it('use no meaning that is not given', async () => {
    const css = await readStyles();
    const given = new Set(Array.from(css.matchAll(/(--[\w-]+):/g), ([, name]) => name));
    const used = Array.from(css.matchAll(/var\((--[\w-]+)/g), ([, name]) => name);
    expect(used.filter((name) => !given.has(name))).toEqual([]);
  });

  it('fetch nothing from anywhere', async () => {
    expect(await readStyles()).not.toMatch(/@import|@font-face|url\(\s*['"]?(?:https?:|\/\/|data:)/i);
  });

  it('stay under 11 KB as sent', async () => {
    expect(gzipSync(await readStyles()).length).toBeLessThan(11_000);
  });
});

describe('templates', () => {
  it('put out raw only what is included, our own drawings, and the page in its layout', async () => {
    const views = new URL('../../views/', import.meta.url);
    const names = (await readdir(new URL('parts', views))).filter((name) => name.endsWith('.eta'));
    const paths = [...names.map((name) => `parts/${name}`), 'layout.eta', 'pages/reference-parts/page.eta'];
    for (const path of paths) {
      const text = await readFile(new URL(path, views), 'utf8');
      const raw = Array.from(text.matchAll(/<%~\s*([^\s(]+)/g), ([, call]) => call);
      const allowed = path === 'layout.eta' ? ['include', 'it.body'] : ['include', 'it.svg'];
      expect(
        raw.filter((call) => !allowed.includes(call ?? '')),
        path,
      ).toEqual([]);
    }
  });
});
