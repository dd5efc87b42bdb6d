import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { worstFirst } from '../../../server/steps/consequences/judged.ts';
import { inHand, SORREL } from './hand-part.ts';
import { about, line, log } from './lash-log.ts';
import { nothingKnown } from './plain.ts';
import { PLAIN, read } from './plain-build.ts';
import { EIGHT, heard, setUpOn, sixteen } from './whole-sheet.ts';

/* What is next is one thing, on every face. How far a call is read before anything is looked up is common practice, no source. */

describe('a stop waits for one question, and that one is put first', () => {
  // .338 under .350 is more than .010 in down: the limit of seeds/allowances.json. .463 is a turn under .352 × 1.6.
  const sheet = sixteen(1.6, (_, place) =>
    place === '5 intake'
      ? { lobe: 0.338, lift: 0.541 }
      : place === '7 exhaust'
        ? { lobe: 0.352, lift: 0.463 }
        : {},
  );
  const said = heard({ ...EIGHT, sheet });

  test('whatever else is asked of other valves', () => {
    expect(said.next).toBe('under-lobe-worn');
    expect(said.all.next?.settles).toBe('lobe-worn');
    expect(said.all.questions[0]).toMatchObject({ code: 'lobe-worn', isNext: true, weight: 'strong' });
    expect(said.asks).toContain('turn-miscounted');
  });

  test('and the valve that stopped it has the first headline', () => {
    expect(said.headlines[0]).toMatch(/^5 intake is the odd one/);
  });
});

describe('a set-up that is being read', () => {
  const readSo = (lifts: readonly number[]) => heard({ ...nothingKnown, ...setUpOn(1, undefined, lifts) });

  test.each([
    [[0.5725], 'two more passes'],
    [[0.5725, 0.572], 'one more pass'],
  ])('has its passes next until all three are in: after %j %s', (lifts, left) => {
    expect(readSo(lifts).sentence).toContain(`Read the valve lift of 1 intake, ${left}`);
  });

  test('only then is anything looked up', () => {
    expect(readSo([0.5725, 0.572, 0.572]).next).toBe('arm');
  });
});

describe('the ratio a card works with', () => {
  const lifts = (valveLift?: number): Evidence['card'] => ({
    intake: { lobeLift: 0.35 * IN, ...(valveLift === undefined ? {} : { valveLift: valveLift * IN }) },
    exhaust: {},
  });
  const asksFor = (card: Evidence['card']) =>
    heard({ ...nothingKnown, card, ...setUpOn(1, undefined, [0.56, 0.56, 0.56]) }).all.missing.map(
      ({ sentence }) => sentence,
    );

  test('is not asked for where its own lifts come to it: .560 / .350 = 1.6', () => {
    expect(asksFor(lifts(0.56))).not.toContain('The ratio the card assumes.');
    expect(asksFor(lifts())).toContain('The ratio the card assumes.');
  });
});

describe('a part whose family is not known', () => {
  test('is answered by what its hole tells: .4355 in suggests a 7/16 stud (common practice, no source)', () => {
    const [hole, again] = SORREL;
    const [first, second] = heard(inHand([hole, again].filter((each) => each !== undefined))).headlines;
    expect(first).toMatch(/^The hole suggests 7\/16-14 UNC or 7\/16-20 UNF; the thread proves it\.$/);
    expect(second).toMatch(/no family is named from one kind of reading/);
  });

  test('and by its family, once one is named', () => {
    expect(heard(inHand(SORREL)).headlines[0]).toContain('Sorrel 160-B stands first');
  });
});

describe('a lash log of some of the valves', () => {
  const six = (lash: Evidence['lash']) =>
    heard({ ...about(log(lash)), engine: { cylinders: 6, lifter: 'solid-flat', mounting: 'stud' } });

  test('does not pass over the others when the answer is said', () => {
    const said = six([line(1, '2026-02-01', 0.018)]);
    expect(said.all.missing.map(({ sentence }) => sentence)).toContain(
      'The gap of the 11 valves that nobody has read.',
    );
    const end = said.all.next;
    if (end?.action === 'said') expect(end.sentenceAtBench).toContain('Not known: the other valves.');
    else expect(end?.action).not.toBe('close');
  });
});

describe('a gap that was read, and comes out otherwise', () => {
  const change = (value: number): Evidence => ({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'choose-ratio' },
    card: {
      assumedRatio: 1.5,
      intake: { lobeLift: 0.36 * IN, lash: 0 },
      exhaust: { lobeLift: 0.364 * IN, lash: 0 },
    },
    springs: { ...PLAIN.springs, retainerToSeal: 0.7 * IN, solidHeight: 1.25 * IN },
    rockers: { soldAs: 1.5, planned: 1.6, pivotToTip: 1.48 * IN },
    sheet: [read(1, 'exhaust', 'retainer-to-seal', value, { spring: 'running' })],
  });
  const said = heard(change(0.062));

  test('is gone over next, with both figures, and not told as a gap without a word', () => {
    expect(said.sentence).toMatch(
      /^1 exhaust: With nothing turned: go over the \.062 in as it was put down.*: calculated it would be \.\d+ in/,
    );
    expect(said.sentence).not.toContain('no word yet');
    expect(said.headlines[0]).toMatch(/First: the \.062 in read on 1 exhaust gone over/);
  });

  test('has one figure as it was read, and what is taken off it beside', () => {
    const asked = said.all.questions.find(({ code }) => code === 'gap-against-calculated');
    expect(asked?.size).toMatch(
      /^It was read \.062 in on the running spring\. With up to \.\d+ in taken off for what bends/,
    );
    expect(asked?.isNext).toBe(true);
    const gaps = said.all.details.change.flatMap((each) => each.gaps);
    expect(gaps.find(({ before }) => before?.basis === 'measured')?.before?.less).toMatch(
      /off for what bends/,
    );
  });

  test('stands open on its page with the valve that the headline names', () => {
    const [first] = worstFirst(said.all);
    expect(said.headlines[0]).toMatch(/worst first: retainer to seal on 1 exhaust/);
    expect(first?.about).toMatchObject({ of: 'valve', cylinder: 1, valve: 'exhaust' });
  });
});
