import { describe, expect, test } from 'vitest';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence, Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { PLAIN } from '../mechanics/assessment/plain-build.ts';
import { type Kept, workingsOf } from '../tools/record/kept-workings.ts';
import { answerTo } from './answer-to.ts';

/*
 * A lobe is held against the card as the build has it now. By hand: equal drop at 64.5 and 159.5 peaks at 112; against a
 * card of 108 that is 4 late, against one of 112 nothing. Events 8 before TDC and 49 after BDC are 237 open, and peak at
 * 237/2 − 8 = 110.5; 13 and 49 are 242, and peak at 108.
 */

const DEG = Math.PI / 180;
const STOP: Kept = ['top-dead-centre', { stopReadings: ['36 deg', '36 deg'] }];
const drop = (more: object = {}): Kept => ['centreline', { before: '64.5 deg', after: '159.5 deg', ...more }];
const events = (opens: string, more: object = {}): Kept => [
  'centreline',
  { opens, closes: '49 ABDC', ...more },
];

const cardOf = (centreline?: number, duration?: number): Partial<Evidence> => ({
  card: {
    ...PLAIN.card,
    intake: {
      ...(centreline === undefined ? {} : { centreline: centreline * DEG }),
      ...(duration === undefined ? {} : { durations: [{ atLift: 0.05 * 0.0254, duration: duration * DEG }] }),
    },
  },
});

const said = (
  kept: readonly Kept[],
  base: Partial<Evidence>,
  answers: readonly AnswerEvidence[] = [],
): Assessment =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'cam-timing' },
    ...base,
    answers,
    workings: workingsOf(kept),
  });

/** All that is said, in one text. */
const text = ({ headlines, next }: Assessment): string =>
  [...headlines.map(({ sentence }) => sentence), next?.sentence ?? ''].join('\n');

describe('told with the reading, by the build, or by both alike: 4° late', () => {
  test.each([
    ['with the reading alone', drop({ card: '108 deg' }), cardOf()],
    ['by the build alone, whenever it was said', drop(), cardOf(108)],
    ['by both', drop({ card: '108 deg' }), cardOf(108)],
  ] as const)('%s', (_, reading, base) => {
    const all = said([STOP, reading], base);
    expect(text(all)).toMatch(/112° after TDC, give or take 1°: 4° retarded against the card/);
    expect(all.questions.map(({ code }) => code)).not.toContain('card-differs');
    expect(all.missing.map(({ sentence }) => sentence).join()).not.toMatch(/on the cam card/);
  });
});

describe('the card was put right since: 112 in the build, 108 with the reading', () => {
  const kept = [STOP, drop({ card: '108 deg' })];
  const open = said(kept, cardOf(112));

  test('nothing is told against either, and it is asked first', () => {
    expect(text(open)).not.toMatch(/: 4° retarded|straight up/);
    expect(text(open)).toMatch(/The build has 112°; the reading was held against 108°\. No word against/);
    expect(open.next).toMatchObject({ action: 'card-differs', turns: false });
    expect(open.questions.filter(({ code }) => code === 'card-differs')).toHaveLength(1);
  });

  test('as the build has it: straight up', () => {
    const all = said(kept, cardOf(112), [answerTo(open, 'card-differs', 'build')]);
    expect(text(all)).toMatch(/: straight up, as the card has it/);
    expect(all.next?.action).toBe('said');
  });

  test('as it was told with the reading: 4° late', () => {
    const all = said(kept, cardOf(112), [answerTo(open, 'card-differs', 'reading')]);
    expect(text(all)).toMatch(/4° retarded/);
  });

  test('put right once more, it is asked of the new figure', () => {
    const all = said(kept, cardOf(110), [answerTo(open, 'card-differs', 'reading')]);
    expect(all.next?.action).toBe('card-differs');
    expect(text(all)).not.toMatch(/: 4° retarded/);
  });

  test('a word that is none of its answers settles nothing', () => {
    const all = said(kept, cardOf(112), [answerTo(open, 'card-differs', 'banana')]);
    expect(all.next?.action).toBe('card-differs');
  });

  test('read again with the right card it is not asked any more', () => {
    const all = said([...kept, drop({ card: '112 deg' })], cardOf(112));
    expect(text(all)).toMatch(/straight up/);
    expect(all.questions.map(({ code }) => code)).not.toContain('card-differs');
  });
});

test('an exhaust is held against its own side of the card', () => {
  const base: Partial<Evidence> = { card: { ...PLAIN.card, exhaust: { centreline: 112 * DEG } } };
  const all = said([STOP, ['centreline', { before: '-160 deg', after: '-70 deg', side: 'exhaust' }]], base);
  // (160 + 70) / 2 = 115 before TDC: 3 early.
  expect(text(all)).toMatch(/The exhaust peaks 115° before TDC, give or take 1°: 3° advanced/);
});

describe('a duration that is not the card’s', () => {
  test.each([
    ['told with the reading', events('8 BTDC', { cardDuration: '242 deg' }), cardOf(108)],
    ['by the build', events('8 BTDC'), cardOf(108, 242)],
  ] as const)('%s: no word against the card, and both events come first', (_, reading, base) => {
    const all = said([STOP, reading], base);
    expect(text(all)).toMatch(/The duration is 5° under the card’s.*No word against the card yet/);
    expect(text(all)).not.toMatch(/2\.5° retarded/);
    expect(all.next).toMatchObject({ action: 'duration-off' });
  });

  test('looked, and right: it counts', () => {
    const open = said([STOP, events('8 BTDC')], cardOf(108, 242));
    const all = said([STOP, events('8 BTDC')], cardOf(108, 242), [
      { ...answerTo(open, 'duration-off', 'not-found'), found: false },
    ]);
    expect(text(all)).toMatch(/110\.5° after TDC, give or take 1°: 2\.5° retarded/);
    expect(all.next?.action).toBe('said');
  });

  test('read again, the answer of the first is not one of the second', () => {
    const first = said([STOP, events('8 BTDC')], cardOf(108, 242));
    const answer = { ...answerTo(first, 'duration-off', 'not-found'), found: false };
    const second = said([STOP, events('8 BTDC'), events('9 BTDC')], cardOf(108, 242), [answer]);
    expect(second.next?.action).toBe('duration-off');
    const wrong = { ...answerTo(first, 'duration-off', 'found'), found: true };
    const third = said([STOP, events('8 BTDC'), events('13 BTDC')], cardOf(108, 242), [wrong]);
    expect(third.next?.action).toBe('said');
    expect(text(third)).toMatch(/108° after TDC.*straight up/);
  });

  test('its events found wrong, what was read at equal drop before it counts', () => {
    const kept = [STOP, drop(), events('8 BTDC')];
    const open = said(kept, cardOf(112, 242));
    const wrong = { ...answerTo(open, 'duration-off', 'found'), found: true };
    expect(text(said(kept, cardOf(112, 242), [wrong]))).toMatch(
      /112° after TDC, give or take 1°: straight up/,
    );
    // Nothing else was read: it stays in doubt until it is read again.
    const alone = said([STOP, events('8 BTDC')], cardOf(112, 242), [
      { ...answerTo(said([STOP, events('8 BTDC')], cardOf(112, 242)), 'duration-off', 'found'), found: true },
    ]);
    expect(text(alone)).toMatch(/No word against the card yet/);
  });

  test('the card’s own duration, put right since, is asked', () => {
    const all = said([STOP, events('13 BTDC', { cardDuration: '242 deg' })], cardOf(108, 246));
    expect(all.questions.find(({ code }) => code === 'card-differs')?.ask).toBe(
      'Which duration does the card give the intake: 246° or 242°?',
    );
  });
});

describe('an error of the pointer that was taken off, and another one at the stop', () => {
  const out = (after: number, before: number): Kept => [
    'top-dead-centre',
    { stopReadings: [`${after} deg`, `${before} deg`] },
  ];
  // 112 read, 1.5 too much: 110.5, which is 2.5 late of 108; with 4.5 too much it is 107.5.
  const left = drop({ pointerOff: '1.5 deg' });

  test('alike, it counts', () => {
    expect(text(said([out(37.5, 34.5), left], cardOf(108)))).toMatch(/110\.5° after TDC.*2\.5° retarded/);
  });

  test('the stop was put right since: asked, and then the one that holds is taken off', () => {
    const open = said([out(40.5, 31.5), left], cardOf(108));
    expect(text(open)).not.toMatch(/: 2\.5° retarded/);
    expect(open.next?.action).toBe('pointer-differs');
    const by = (word: string) =>
      text(said([out(40.5, 31.5), left], cardOf(108), [answerTo(open, 'pointer-differs', word)]));
    expect(by('stop')).toMatch(/107\.5° after TDC/);
    expect(by('reading')).toMatch(/110\.5° after TDC.*2\.5° retarded/);
  });

  test('as far out the other way is told apart in words', () => {
    // 38 and 34: 2° too much; −2 was taken off.
    const open = said([out(38, 34), drop({ pointerOff: '-2 deg' })], cardOf(108));
    const asked = open.questions.find(({ code }) => code === 'pointer-differs');
    expect(asked?.ask).toBe(
      'When the intake was read, did the wheel read 2° too much after TDC, or 2° too little after TDC?',
    );
    expect(asked?.answers.map(({ label }) => label)).toEqual([
      '2° too much after TDC, as the stop has it',
      '2° too little after TDC, as it was told',
    ]);
  });

  test('shifted afterwards and read alike: the first stop has it', () => {
    const all = said([out(37.5, 34.5), left, out(36, 36)], cardOf(108));
    expect(all.questions.map(({ code }) => code)).not.toContain('pointer-differs');
  });
});
