import { expect, test } from 'vitest';
import { inputsSaid } from '../../server/call/worked/inputs-said.ts';
import type { Working } from '../../server/records/workings/workings.ts';
import { measuredPages } from './measured-pages.ts';

const { freshCall, page, post } = measuredPages();

test('the caution of turning is in sight before the act, and growth is judged on nothing that was ticked beforehand', async () => {
  await freshCall();
  const summaryOf = (html: string) => /<details[^>]*id="how"[^>]*>\s*<summary>([^<]*)/.exec(html)?.[1];
  expect(summaryOf(await page('timing'))).toContain('never the starter');
  expect(summaryOf(await page('geometry'))).toContain('By hand at the crank bolt');
  const lash = await page('adjuster?of=lash');
  expect(lash).toContain('name="moment"');
  expect(lash).not.toMatch(/name="(moment|nut)"[^>]*checked/);
  const typed = { form: 'lash', part: 'lash', cylinder: '6', valve: 'exhaust', lash: '.018 in' };
  expect((await post('/lash', typed)).statusCode).toBe(422);
  expect((await post('/lash', { ...typed, moment: 'set' })).statusCode).toBe(303);
});

test('two readings of a sum are read back, a long list by its count', () => {
  const said = (rows: number[]) => {
    const working: Pick<Working, 'inputs'> = {
      inputs: { stopReadings: rows.map((value) => ({ value, unit: 'deg' })) },
    };
    return inputsSaid(working);
  };
  expect(said([31.5, 28.5])).toMatch(/^stop readings 31\.50? deg and 28\.50? deg$/);
  expect(said([1, 2, 3, 4, 5])).toBe('stop readings 5 rows');
});
