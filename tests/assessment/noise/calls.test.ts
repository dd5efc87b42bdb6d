import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memberOf } from '../../../shared/member.ts';
import { inThreeOrders } from '../../tools/orders.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';
import { tellsToTurn } from '../../tools/tells-to-turn.ts';
import { CALLS } from './calls.ts';
import { type Played, playNoise, withoutIds } from './play.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const texts = (value: unknown, name: string): string[] =>
  list(value).map((each) => String(memberOf(each, name)));

/** Causes that remain, with how much speaks for each. */
const leftOf = (noise: Record<string, unknown>) =>
  list(noise.candidates)
    .filter((each) => memberOf(each, 'remains') === true)
    .map((each) => ({
      cause: String(memberOf(each, 'cause')),
      facts: list(memberOf(each, 'for')).length,
      seen: memberOf(each, 'seen'),
    }));

/** Sentences of the assessment that every face has: what is told of noise, what is next, and why nobody turns it. */
const spoken = (assessment: Record<string, unknown>): string[] => [
  ...list(assessment.headlines)
    .filter((each) => memberOf(each, 'step') === 'noise')
    .map((each) => String(memberOf(each, 'sentence'))),
  ...texts(assessment.stop, 'sentence'),
];

describe.each(CALLS)('“$said”', (call) => {
  let played: readonly Played[];
  beforeAll(async () => {
    // What is said of one question twice keeps its turn, and here nothing is. Each order is a build of its own.
    played = await Promise.all(
      inThreeOrders(call.entries).map(async (order) => {
        const play = await playNoise(service, desk, call.goal ?? 'noise-or-failure', call.engine);
        for (const entry of order) await play.enter(entry);
        return play;
      }),
    );
  });

  test('the causes that are left, what is next and what stops it', async () => {
    const [play] = played;
    const [noise, assessment] = [await play?.get('/noise'), await play?.get('/assessment')];
    const left = leftOf(noise ?? {});
    if (call.left !== 'any')
      expect(left.map(({ cause }) => cause).toSorted()).toEqual([...call.left].toSorted());
    const most = left
      .filter(({ facts, seen }) => facts === left[0]?.facts && seen === left[0].seen)
      .map(({ cause }) => cause);
    if (call.first !== undefined) expect(most).toEqual(call.first);
    if (call.next !== 'any') expect(memberOf(assessment?.next, 'action')).toBe(call.next);
    if (call.turns !== 'any') expect(memberOf(assessment?.next, 'turns')).toBe(call.turns);
    if (call.sentence !== undefined) expect(memberOf(assessment?.next, 'sentence')).toMatch(call.sentence);
    expect(texts(assessment?.questions, 'code').includes('contact-told-otherwise')).toBe(
      call.contact === true,
    );
    for (const check of call.checksNot ?? []) expect(texts(noise?.checks, 'code')).not.toContain(check);
    const notRun = texts(assessment?.notToRun, 'sentence');
    if (call.stop === undefined || call.notToRun !== undefined) {
      expect(notRun).toHaveLength(call.notToRun?.length ?? 0);
      for (const [place, pattern] of (call.notToRun ?? []).entries()) expect(notRun[place]).toMatch(pattern);
    }
    if (call.stopSaid !== undefined) expect(texts(assessment?.stop, 'sentence')[0]).toMatch(call.stopSaid);
    if (call.nearest !== undefined)
      expect(memberOf(memberOf(noise?.nearest, 'check'), 'code')).toBe(call.nearest);
    expect(texts(assessment?.stop, 'id')).toEqual(call.stop ?? []);
    if (call.headline !== undefined)
      expect(texts(noise?.headlines, 'sentence')).toEqual([expect.stringMatching(call.headline)]);
    // Setting it again hides it: on none of these calls are thread and turns of the adjuster asked for.
    expect(texts(assessment?.missing, 'id')).not.toContain('missing:adjuster:turns');
  });

  test('in three orders of entry the same is said', async () => {
    for (const path of ['/assessment', '/noise']) {
      const [first, ...others] = await Promise.all(
        played.map(async (play) => withoutIds(await play.get(path))),
      );
      for (const other of others) expect(other).toEqual(first);
    }
  });

  test('every face says it in the same words, the export has every answer, and under a stop none tells anybody to turn it', async () => {
    for (const play of played.slice(0, 1)) {
      const assessment = await play.get('/assessment');
      const said = spoken(assessment);
      for (const [face, text] of await play.faces()) {
        for (const sentence of said) expect(text, face).toContain(sentence);
        if (call.stop !== undefined) expect(tellsToTurn(text), face).toEqual([]);
      }
      const kept = list((await play.get('/export')).answers).map((each) => memberOf(each, 'answer'));
      const given = call.entries.flatMap((entry) => ('answer' in entry ? [entry.answer] : []));
      expect(kept).toEqual(given);
    }
  });
});
