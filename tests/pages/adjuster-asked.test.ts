import { describe, expect, test } from 'vitest';
import { measuredPages, read } from './measured-pages.ts';

const { freshCall, page, post } = measuredPages();

/*
 * A lash that is typed for the turns of a nut. Three turns of 7/16-20 at 1.6 hold the valve .39 in open: 3 × .050 × (1 +
 * 1/1.6) × 1.6. What a lash can be is common practice, no published source.
 */
const adjuster = {
  form: 'working',
  computation: 'adjuster',
  part: 'adjuster',
  thread: '7/16-20',
  ratio: '1.6',
  mount: 'stud-nut',
  lifter: 'solid',
  lashWanted: '.016',
};

describe('a lash for the turns of a nut', () => {
  test.each([
    ['.4', /came as \.4 without a unit\. Is it 0\.4 mm\?/],
    ['0,4', /came as 0,4 without a unit\. Is it 0\.4 mm\?/],
    ['4', /can be read in more than one way: 4 mm, or 4 thou = \.004 in\. Pick one/],
    ['18 in', /is 18 in; .*to \.250? in/],
  ])('%s is asked about, and nothing is kept', async (lashFound, pattern) => {
    await freshCall();
    const answer = await post('/workings/adjuster', { ...adjuster, lashFound });
    expect(answer.statusCode).not.toBe(303);
    const text = read(answer.body);
    expect(text).toMatch(pattern);
    expect(text).not.toMatch(/flats/);
    expect(answer.body).toContain(`value="${lashFound}"`);
  });

  test.each([
    ['.022', 'in an inch call'],
    ['22 thou', 'in thousandths'],
    ['16 mil', 'which a lash has of thousandths alone'],
    ['0.4 mm', 'with its unit'],
  ])('%s is understood, %s', async (lashFound) => {
    await freshCall();
    expect((await post('/workings/adjuster', { ...adjuster, lashFound })).statusCode).toBe(303);
  });

  test.each(['half a turn', '1/2 turn', '3/4', 'one and a half'])('turns may be said: %s', async (turns) => {
    await freshCall();
    const { lashWanted: _, ...solid } = adjuster;
    expect((await post('/workings/adjuster', { ...solid, turns })).statusCode).toBe(303);
    expect(read(await page('adjuster?of=adjuster'))).toMatch(/turn/);
  });
});
