import { expect, test } from 'vitest';
import { textOf } from '../tools/page-text.ts';
import { measuredPages, read } from './measured-pages.ts';

const { freshCall, page, post, sheet } = measuredPages();

/* A follower lies on a pivot at its one end and on the valve’s tip, with no pushrod, stud or stand (from memory). */
const OTHERS = /valley|exhaust side|pushrod|\bstuds?\b|\bstands?\b|\brockers?\b|guide plate|trunnion/i;
const DRAWN = /<figure[\s\S]*?<\/figure>/g;

test('marks of a follower are told by its pivot, on every page that has them', async () => {
  await freshCall({ engine: { cylinders: 4, valveGear: 'finger-follower' } });
  const mark = { form: 'mark', valve: 'intake', width: '.090 in', off: '.03 in', found: 'not-said' };
  const sides = ['valley', 'exhaust', 'sideways'];
  for (const [index, side] of sides.entries())
    await post('/tip-marks', { ...mark, cylinder: String(index + 1), side, spring: 'not-said' });
  const step = await page('geometry?of=marks');
  const [form = ''] = /<form[^>]*\btip-marks"[\s\S]*?<\/form>/.exec(step) ?? [];
  expect(read(form)).toMatch(/Toward the pivot.*Away from the pivot.*out of line with the follower/);
  expect(read(form)).not.toMatch(OTHERS);
  const drawn = step.match(DRAWN) ?? [];
  expect(drawn.length).toBeGreaterThan(3);
  for (const each of drawn) expect(textOf(each)).not.toMatch(OTHERS);
  expect(read(step)).toContain('.030 in toward the pivot');
  expect(read(step)).toContain('Tip mark 2 intake .090 in wide, .03 in away from the pivot');
  const text = [read(await sheet('report')), read(await sheet('takeover'))];
  for (const each of text) {
    expect(each).toContain('.090 in wide, .03 in toward the pivot');
    expect(each).not.toMatch(/toward the valley|exhaust side|pushrod length|guide plate/i);
  }
});
