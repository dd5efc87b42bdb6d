import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { NOISE_QUESTIONS } from '../../../shared/schemas/noise.ts';
import { at } from '../../tools/numbers.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';
import { type Played, playCall, type Read } from './play.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const lobes = (...cylinders: number[]): Read[] =>
  cylinders.map((cylinder) => ({ cylinder, kind: 'lobe-lift', reading: '.353 in' }));
const lifts = (read: Readonly<Record<number, string>>): Read[] =>
  Object.entries(read).map(([cylinder, reading]) => ({
    cylinder: Number(cylinder),
    reading: `${reading} in`,
  }));
const REST = { 1: '.565', 2: '.564', 3: '.566', 4: '.565', 6: '.564', 8: '.566' };

async function nextIs(play: Played, action: string, sentence: RegExp): Promise<void> {
  const next = await play.next();
  expect([next.action, next.sentence]).toEqual([action, expect.stringMatching(sentence)]);
}

describe('what is next on a call about one valve: playbook call 7, common practice, no published source', () => {
  test('a clear odd one again before the rest, the swap on the same bank, both again; never one that was done', async () => {
    const play = await playCall(service, person);
    await nextIs(play, 'valves', /^Read lobe and valve lift of every valve/);
    await play.keep([...lobes(4, 5, 6), ...lifts({ 1: '.565', 2: '.564' })]);
    await nextIs(play, 'rows', /^Read the valve lift of 3, 4, 5, 6, 7 and 8 intake, the same way/);
    await play.keep(lifts({ 3: '.566', 4: '.565', 5: '.547', 6: '.564', 8: '.566' }));
    // 7 is not read yet, and the fifth is clear without it.
    await nextIs(play, 'read-again', /^Read 5 intake once more, the same way\. Nothing is moved/);
    await play.keep(lifts({ 5: '.546' }));
    // 3 and 7 are as near along the bank 1 3 5 7; 4 and 6 are nearer by number, under the other cover.
    await nextIs(play, 'name-arms', /^Put the arms of 5 intake and 3 intake \(on the same bank\) on record/);
    for (const [arm, cylinder] of [['arm E', 5] as const, ['arm C', 3] as const]) {
      await play.name(arm);
      await play.place(arm, cylinder);
    }
    await nextIs(play, 'swap-arms', /^Swap arm E \(5 intake\) with arm C \(3 intake, on the same bank\)/);
    await play.place('arm E', 3);
    await play.place('arm C', 5);
    await nextIs(play, 'read-swapped', /^Read 3 intake with arm E and 5 intake with arm C as they sit now/);
    await play.keep(lifts({ 3: '.546' }));
    await nextIs(play, 'read-swapped', /^Read 5 intake with arm C as they sit now/);
    await play.keep(lifts({ 5: '.565' }));
    // It is the part: its number leads to its lot, whatever else is still to read.
    await nextIs(play, 'read-lot', /^Read every number on arm E besides its ratio, word for word/);
  });

  test('what stays on the valve: pushrods, then tip and stud height, each answered and told', async () => {
    const play = await playCall(service, person);
    await play.keep([
      ...lobes(4, 5, 6),
      ...lifts({ ...REST, 5: '.547', 7: '.565' }),
      ...lifts({ 5: '.547' }),
    ]);
    for (const [arm, cylinder] of [['arm E', 5] as const, ['arm C', 3] as const]) {
      await play.name(arm);
      await play.place(arm, cylinder);
    }
    await play.place('arm E', 3);
    await play.place('arm C', 5);
    await play.keep(lifts({ 3: '.565', 5: '.547' }));
    const put = async (code: string, answer: string) => {
      const { questions } = await play.assessment();
      const question = (Array.isArray(questions) ? questions : []).find((each) => at(each, 'code') === code);
      await play.post('/answers', {
        question: at(question, 'ask'),
        questionId: at(question, 'id'),
        code,
        answer,
      });
    };
    await nextIs(play, 'lash-not-said', /^Ask whoever read them/);
    await put('lash-not-said', 'zero');
    await nextIs(play, 'swap-pushrods', /^Swap the pushrods of 3 intake and 5 intake, leave the arms/);
    await put('pushrod-or-valve', 'stays: low with either');
    await nextIs(play, 'look-at-heights', /^With nothing turned, lay a straightedge over the valve tips/);
    await put('tip-or-stud-height', 'differs');
    await nextIs(play, 'said', /^Say what was found/);
    const told = at(await play.sheet(), 'springs', 0, 'swaps', 0);
    expect(String(at(told, 'words'))).toMatch(/not the arm: tip or stud height of 5 intake, unlike those/);
    expect(at(told, 'needs')).toEqual(['the height of tip or stud of 5 intake put right']);
    await put('pushrod-or-valve', 'goes');
    const again = at(await play.sheet(), 'springs', 0, 'swaps', 0);
    expect(String(at(again, 'words'))).toMatch(/not the arm: the pushrod of 5 intake, which it went with\.$/);
    await nextIs(play, 'said', /^Say what was found/);
  });

  /** Confusions 1, 3, 5 and 16 of trade practice 7: common practice, no published source. */
  test.each([
    ['turn-miscounted', { 5: '.464' }, '.353', true],
    ['unit-mixed', { 5: '14.35' }, '.353', false],
    ['gross-lift-as-lobe', { 5: '.565' }, '.565', true],
    [
      'copied-reading',
      { 1: '.565', 2: '.565', 3: '.565', 4: '.565', 5: '.565', 6: '.565', 8: '.565' },
      '.353',
      true,
    ],
  ] as const)(
    '%s: asked before anything that would rest on it, rows unread or not',
    async (code, over, lobe, turns) => {
      const play = await playCall(service, person);
      await play.keep([
        ...lobes(1, 4, 6),
        { cylinder: 5, kind: 'lobe-lift', reading: `${lobe} in` },
        ...lifts({ ...REST, ...over }),
      ]);
      const next = at(await play.assessment(), 'next');
      expect([at(next, 'action'), at(next, 'turns')]).toEqual([code, turns]);
      await play.keep(lifts({ 7: '.565' }));
      expect((await play.next()).action).toBe(code);
    },
  );

  test('a lobe that was not read comes before any part is moved', async () => {
    const play = await playCall(service, person);
    await play.keep(lifts({ ...REST, 5: '.547', 7: '.565' }));
    await nextIs(
      play,
      'read-again',
      /^Read 5 intake once more, the same way, then read the lobe of 4, 5 and 6 intake at the lifter\./,
    );
    await play.keep(lifts({ 5: '.547' }));
    await nextIs(play, 'read-again', /^Read the lobe of 4, 5 and 6 intake at the lifter\./);
    await play.keep(lobes(5));
    await nextIs(play, 'read-again', /^Read the lobe of 4 and 6 intake at the lifter\./);
    await play.keep(lobes(4, 6));
    await nextIs(play, 'name-arms', /^Put the arms of/);
  });

  test('a low lobe is read again with its neighbours, and nothing is swapped for it', async () => {
    const play = await playCall(service, person);
    // .346 for .353 is .007 low, .011 at the valve on a 1.6: the lobe accounts for it.
    await play.keep([
      ...lobes(1, 2, 3, 7),
      { cylinder: 5, kind: 'lobe-lift', reading: '.346 in' },
      ...lifts({ ...REST, 5: '.554', 7: '.565' }),
    ]);
    await nextIs(play, 'read-lobe-again', /^Read the lobe of 4, 5 and 6 intake at the lifter/);
    await play.keep([{ cylinder: 5, kind: 'lobe-lift', reading: '.346 in' }, ...lobes(4, 6)]);
    await nextIs(play, 'said', /^Say what was found/);
  });

  test('where nothing says how the banks are, the nearest by number is offered', async () => {
    const play = await playCall(service, person, { bankOrder: '1 2 3 4 5 6 7 8' });
    await play.keep([...lobes(4, 5, 6), ...lifts({ ...REST, 5: '.547', 7: '.565' })]);
    await play.keep(lifts({ 5: '.547' }));
    await nextIs(play, 'name-arms', /^Put the arms of 5 intake and 4 intake on record/);
  });

  test('the same on a call about noise, once its log is there and what is asked is answered', async () => {
    const play = await playCall(service, person, { goal: 'noise-or-failure' });
    for (const code of Object.keys(NOISE_QUESTIONS))
      await play.post('/answers', {
        question: code,
        code,
        answer: code === 'noise-signs' ? 'none' : 'not-known',
      });
    await play.post('/lash', { cylinder: 5, valve: 'intake', lash: '.016 in', moment: 'found' });
    await play.keep([...lobes(5), ...lifts({ ...REST, 5: '.547', 7: '.565' })]);
    // .565 − .547 = .018 is the .016 of the log within .003: trade practice, row 10.
    await nextIs(play, 'lash-left-in', /^5 intake: Ask whether the lash was out when it was read/);
    await play.post('/answers', {
      question: 'Could the lash of .016 in be left in the lift of 5 intake?',
      code: 'lash-left-in',
      answer: 'not-found',
    });
    await nextIs(play, 'read-again', /^Read 5 intake once more/);
  });

  test('a difference that is gone is looked for where it was, and not twice', async () => {
    const play = await playCall(service, person);
    await play.keep([
      ...lobes(3, 4, 5, 6),
      ...lifts({ ...REST, 5: '.545', 7: '.565' }),
      ...lifts({ 5: '.545' }),
    ]);
    for (const [arm, cylinder] of [
      ['E', 5],
      ['C', 3],
      ['E', 3],
      ['C', 5],
    ] as const) {
      if (arm === 'E' ? cylinder === 5 : cylinder === 3) await play.name(arm);
      await play.place(arm, cylinder);
    }
    await play.keep(lifts({ 3: '.566', 5: '.565' }));
    await nextIs(play, 'swap-back', /^Put C and E back on 3 intake and 5 intake as they were/);
    await play.place('E', 5);
    await play.place('C', 3);
    await play.keep(lifts({ 5: '.545', 3: '.566' }));
    await nextIs(play, 'said', /^Say what was found/);
  });
});
