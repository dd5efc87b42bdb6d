import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { nothingKnown } from './plain.ts';
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
  const read = (lifts: readonly number[], more: Partial<Evidence> = {}) =>
    heard({ ...nothingKnown, ...more, ...setUpOn(1, undefined, lifts) });

  test.each([
    [[0.5725], 'two more passes'],
    [[0.5725, 0.572], 'one more pass'],
  ])('has its passes next until all three are in: after %j %s', (lifts, left) => {
    expect(read(lifts).sentence).toContain(`Read the valve lift of 1 intake, ${left}`);
  });

  test('only then is anything looked up', () => {
    expect(read([0.5725, 0.572, 0.572]).next).toBe('arm');
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
