import { describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { measuredPages, read } from './measured-pages.ts';

const { freshCall, open, page, post } = measuredPages();

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

/*
 * Turns past what a thread and a plunger allow: 12 × .050 × (1 + 1/1.6) = .975 in, where no plunger goes further than .400
 * (common practice, no published source). On solid lifters 12 × .13 = 1.56 in of lash.
 */
describe('turns that no lifter can take', () => {
  const { thread, mount } = adjuster;
  const nut = { thread, mount };
  test.each([
    [
      'a preload',
      'lifter-preload',
      nut,
      /12 turns of this thread would press the plunger \.9750? in; none goes further than \.400 in\. Was 1\/2 meant\?/,
    ],
    ['a hydraulic lifter', 'adjuster', { ...nut, lifter: 'hydraulic' }, /would press the plunger \.975 in/],
    [
      'a solid lifter',
      'adjuster',
      { ...nut, lifter: 'solid' },
      /would change the lash by 1\.560 in; up to \.250 in can be/,
    ],
  ])('%s: 12 turns are refused at their field, on form and JSON', async (_, computation, fields, said) => {
    await freshCall();
    const form = { form: 'working', part: computation, computation, ...fields, ratio: '1.6', turns: '12' };
    const answer = await post('/workings/adjuster', form);
    expect(answer.statusCode).toBe(422);
    expect(read(answer.body)).toMatch(said);
    expect(answer.body).toContain('value="12"');
    const { service, person, buildId } = open();
    const json = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/workings`, {
      computation,
      inputs: { ...fields, ratio: 1.6, turns: 12 },
    });
    expect(json.status).toBe(422);
    expect(json.text.replaceAll('\\/', '/')).toMatch(said);
    expect(json.text).toContain('"pointer":"/inputs/turns"');
  });
});
