import { describe, expect, it } from 'vitest';
import { createViews } from '../../views/engine.ts';

/** Figures of a sentence that stay whole where a line ends; which they are is the project’s own choice. */
const eta = createViews();
const kept = (text: string) =>
  Array.from(
    eta.render('/parts/said', { text }).matchAll(/<span class="num">([^<]*)<\/span>/g),
    ([, each]) => each,
  );

describe('a sentence', () => {
  it.each([
    ['1 intake: 1.747 ± .006 on a light spring.', ['1.747 ± .006']],
    ['at worst .055 in (−.026 to .060)', ['.055 in', '(−.026 to .060)']],
    ['a bore of 1.250 in, 31.75 mm', ['1.250 in', '31.75 mm']],
    ['lash .117 ± .023 in', ['.117 ± .023 in']],
    ['valve 5 inlet and 2 minutes', []],
  ])('%s', (text, whole) => expect(kept(text)).toEqual(whole));

  it('is the same words, with every mark of theirs', () => {
    const text = 'a <b> of .055 in & more';
    const html = eta.render('/parts/said', { text });
    expect(html.replace(/<\/?span[^>]*>/g, '').trim()).toBe('a &lt;b&gt; of .055 in &amp; more');
  });
});
