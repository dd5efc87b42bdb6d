import { describe, expect, it } from 'vitest';
import { asWritten } from '../tools/page-text.ts';
import { answerOn, known, plain, referencePages } from '../tools/reference-pages.ts';

const { get, post } = referencePages();

describe('what is typed', () => {
  const lift = { lobeLift: '350 thou', ratio: '1.6', lash: '.016' };

  it('is taken as the forms of the desk take it: thou, and the unit beside the field where none is typed', async () => {
    const { html } = await post('lift', lift);
    // .350 × 1.6 − .016 = .544
    expect(html).toContain('<span class="result-value">.544</span>');
    expect(asWritten(html)).toContain('read as <b>.016 in</b>');
  });

  it('a ratio is read out with its interval, digits no finer than it', async () => {
    const { html } = await get('/reference/ratio-at-full-lift');
    // Interval 1.4939496 to 1.5060504 (check of JCGM 100 in the example): half of it is .00605.
    expect(html).toContain(
      '<span class="result-value">1.5000</span> <span class="result-spread num">± .0061</span>',
    );
  });

  it('can be sent in the address, so that an answer has one', async () => {
    const { html } = await post('lift', lift);
    const link = /<a href="(\/reference\/lift\?[^"#]+)#answer">/.exec(html)?.[1];
    const rejected = await get(plain(link ?? 'missing'));
    expect(answerOn(rejected.html)).toEqual(answerOn(html));
  });

  it('stays where it was, with the fault at its field, in the summary, and with what came', async () => {
    const { status, html } = await post('lift', { lobeLift: '.35 lbf', ratio: 'abc', lash: '.02' });
    expect(status).toBe(422);
    expect(html).toContain('value=".35 lbf"');
    expect(html).toContain('value="abc"');
    expect(html).toContain('value=".02"');
    expect(html).toContain('<a href="#f-lobeLift">Lobe lift: ');
    expect(html).toContain('<a href="#f-ratio">Ratio: ');
    expect(plain(html)).toContain('“abc” came');
    expect(html.match(/aria-invalid="true"/g)).toHaveLength(2);
  });

  it('is refused where it is impossible together, at the fields that are named', async () => {
    const { status, html } = await post('lift', { lobeLift: '.01 in', ratio: '1.5', lash: '.5 in' });
    expect(status).toBe(422);
    expect(html).toMatch(/<a href="#f-lash">Lash: [^<]*the valve would not open/);
  });

  it('a long list is computed whole', async () => {
    const angles = Array.from({ length: 2000 }, (_, index) => `${index % 720} deg`).join('\n');
    const { status, html } = await post('piston-drop', {
      stroke: '3.48',
      rodLength: '5.7',
      crankAngles: angles,
      from: 'true-tdc',
    });
    expect(status).toBe(200);
    expect(html).toContain('Drops: 2000 rows');
  });

  it('one item too many is refused with the list left as it was', async () => {
    const angles = Array.from({ length: 2001 }, () => '1').join('\n');
    const { status, html } = await post('piston-drop', {
      stroke: '3.48',
      rodLength: '5.7',
      crankAngles: angles,
      from: 'true-tdc',
    });
    expect(status).toBe(422);
    expect(html).toContain('has 2001 items; 2000 at the most');
    expect(html).toContain(angles);
  });

  it('a line of a list that is wrong is named by its number and its part', async () => {
    const { typed } = known('lobe-profile');
    const { status, html } = await post('lobe-profile', { ...typed, durations: '0 in; 280 deg\n.05 in; x' });
    expect(status).toBe(422);
    expect(plain(html)).toMatch(/Durations: no\. 2, duration [^<]*“x” came|Durations: no\. 2, duration /);
  });

  it('a line with an entry too many is refused, not cut', async () => {
    const { typed } = known('lobe-profile');
    const { status, html } = await post('lobe-profile', { ...typed, durations: '0 in; 280 deg; 5' });
    expect(status).toBe(422);
    expect(html).toContain('line 1 has 3 entries');
  });

  it('a material is a name of the table, or an expansion of one’s own', async () => {
    const { typed } = known('lash-hot-cold');
    const own = await post('lash-hot-cold', { ...typed, 'materials.block': '11.7e-6 1/K' });
    expect(own.status).toBe(200);
    const none = await post('lash-hot-cold', { ...typed, 'materials.block': 'cheese' });
    expect(none.status).toBe(422);
    expect(none.html).toContain('<a href="#f-materials-block">Materials, block: ');
  });

  it('a row can be added without scripts, and nothing is lost by it', async () => {
    const { typed } = known('explain-readings');
    const { status, html } = await post('explain-readings', { ...typed, more: 'readings' });
    expect(status).toBe(200);
    expect(html).toContain(`name="readings.1.value"`);
    expect(html).toContain(`value="${typed['readings.0.value'] ?? 'missing'}"`);
  });
});
