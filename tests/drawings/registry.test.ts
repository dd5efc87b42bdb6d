import { describe, expect, it } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { DRAWINGS, drawingsOf } from '../../server/drawings/registry.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { eta } from '../tools/render-parts.ts';

const computations = await loadComputations();

const drawn = Object.keys(DRAWINGS).flatMap((name) => {
  const each = computations.get(name);
  if (each === undefined) throw new Error(`${name} is drawn and not computed`);
  return (['inch', 'metric'] as const).map((units) => ({
    name: `${name}, ${units}`,
    drawings: drawingsOf(each, each.example.inputs, each.run(each.example.inputs, 'inch').result, units),
  }));
});

const markup = (data: object) => eta.render('/parts/drawing', data);

describe('every drawing of an answer', () => {
  it.each(drawn)('$name has a title, words, a table, and no figure that is not finite', ({ drawings }) => {
    expect(drawings.length).toBeGreaterThan(0);
    for (const data of drawings) {
      const html = markup(data);
      expect(html).not.toMatch(/NaN|Infinity|undefined|\[object/);
      expect(html).toContain('role="img"');
      expect(html).toMatch(/<title id="[^"]+">[^<]{5,}<\/title>/);
      expect(html).toMatch(/<desc id="[^"]+">[^<]{20,}<\/desc>/);
      expect(data.table?.rows.length).toBeGreaterThan(0);
    }
  });

  it.each(drawn)('$name is well-formed, its ids once each and its own', ({ drawings }) => {
    const html = drawings.map(markup).join('');
    expect(htmlFaults(html)).toEqual([]);
    for (const data of drawings) {
      const ids = Array.from(markup(data).matchAll(/ id="([^"]+)"/g), ([, id = '']) => id);
      expect(ids.filter((id) => !id.startsWith(data.id))).toEqual([]);
    }
  });

  it.each(drawn)(
    '$name has its colours from classes alone, so that dark and paper have theirs',
    ({ drawings }) => {
      for (const { svg } of drawings)
        expect(svg).not.toMatch(/style=|fill="|stroke="|#[0-9a-f]{3,6}"|rgb\(/i);
    },
  );

  it.each(drawn)('$name stays on its sheet', ({ drawings }) => {
    for (const { svg, viewBox } of drawings) {
      const [, , width = 0, height = 0] = viewBox.split(' ').map(Number);
      const texts = Array.from(svg.matchAll(/<text[^>]* x="([-\d.]+)" y="([-\d.]+)"/g), ([, x, y]) => [
        Number(x),
        Number(y),
      ]);
      expect(texts.length).toBeGreaterThan(1);
      for (const [x = -1, y = -1] of texts) {
        expect(x >= 0 && x <= width && y >= 8 && y <= height, `text at ${x} ${y} of ${viewBox}`).toBe(true);
      }
    }
  });
});
