import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { at } from '../../tools/numbers.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';
import { ONE_VALVE, ORDERS } from './calls.ts';
import { playCall } from './play.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);

/** Playbook call 7, "one valve differs", and the swap table of trade practice: common practice, no published source. */
describe.each(ONE_VALVE)('$title', (call) => {
  test.each(Object.entries(ORDERS))('%s', async (_, enter) => {
    const play = await playCall(service, person);
    await enter(play, call);
    // What stays on a valve may be its lash: told to have been out, it is a position.
    const asked = list(at(await play.assessment(), 'questions'));
    const lash = asked.find((each) => at(each, 'code') === 'lash-not-said' && at(each, 'step') === 'sheet');
    if (lash !== undefined && (call.verdict === 'position' || call.verdict === 'both'))
      await play.post('/answers', {
        question: at(lash, 'ask'),
        questionId: at(lash, 'id'),
        code: 'lash-not-said',
        answer: 'zero',
      });
    const sheet = await play.sheet();
    const swaps = list(at(sheet, 'springs')).flatMap((each) => list(at(each, 'swaps')));
    expect(swaps.map((each) => at(each, 'verdict'))).toEqual([call.verdict]);
    expect(String(at(swaps[0], 'words'))).toMatch(call.sentence);
    expect(list(at(swaps[0], 'needs')).length).toBeGreaterThan(0);
    const odd = list(at(sheet, 'springs')).flatMap((each) =>
      list(at(each, 'sides')).flatMap((side) => list(at(side, 'odd'))),
    );
    if (call.cause !== undefined) expect(odd.map((each) => at(each, 'cause'))).toEqual([call.cause]);
    // Once a swap has told, nothing beside it says otherwise.
    const said = list(at(sheet, 'headlines'))
      .map((each) => String(at(each, 'sentence')))
      .join('\n');
    if (call.verdict === 'part') expect(said).not.toMatch(/or its position/);
    if (call.verdict === 'position') expect(said).not.toMatch(/the rocker or/);
    expect((await play.next()).action).toBe(call.next);
  });
});
