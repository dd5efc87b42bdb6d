import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { nothingKnown } from './plain.ts';
import { heard, setUpOn } from './whole-sheet.ts';

/** One valve on a light spring, solid lifter, zero lash, with nothing said of arm or card; no small hand was read. */
function read(lobe: number, lifts: readonly number[], more: Partial<Evidence> = {}): Evidence {
  const own = setUpOn(3, undefined, lifts, { valve: 'exhaust', counted: false });
  return {
    ...nothingKnown,
    ...more,
    ...own,
    passes: own.passes.map((pass) =>
      pass.kind === 'lobe-lift' ? { ...pass, value: lobe * IN, readAs: `${lobe} in` } : pass,
    ),
  };
}

/** Whoever stands there looked at what is asked first: it does not fit. */
function lookedAt(evidence: Evidence, line: number): Evidence {
  const asked = heard(evidence).all.questions.find(
    ({ code, answered }) => code === 'turn-miscounted' && answered === undefined,
  );
  if (asked?.about.of !== 'set-up') throw new Error('no turn is asked about');
  const { id: questionId, code, ask: question } = asked;
  const { setUpId } = asked.about;
  const given = { id: `answer-${line}`, line, questionId, code, question, setUpId };
  return {
    ...evidence,
    answers: [...evidence.answers, { ...given, answer: 'not-found', found: false }],
  };
}

const first = (evidence: Evidence) => heard(evidence).all.questions.find(({ isNext }) => isNext === true);

/** Ratios of the trade are 1.45 to 1.8; a turn of the dial is .100 in. Common practice, no source. Sums by hand. */
describe('a lift that makes no ratio of the trade, and with a turn more or less makes one', () => {
  test.each([
    // .441 / .338 = 1.305; .541 / .338 = 1.601.
    ['a turn missing at the valve', 0.338, 0.441, /be missing from/, '1.601'],
    // .641 / .338 = 1.896, over 4.5 % above 1.8; .641 / .438 = 1.463.
    ['a turn missing at the lobe, before one too many at the valve', 0.338, 0.641, /at the lobe/, '1.463'],
    // .541 / .238 = 2.273; .541 / .338 = 1.601.
    ['a turn missing at the lobe', 0.238, 0.541, /missing at the lobe/, '1.601'],
    // .745 / .385 = 1.935; .645 / .385 = 1.675, and .745 / .485 = 1.536.
    ['either, one after the other', 0.385, 0.745, /missing at the lobe/, '1.536'],
  ])('%s: asked first, with no figure before the answer', (_, lobe, lift, ask, ratio) => {
    const evidence = read(lobe, [lift, lift, lift]);
    const said = heard(evidence);
    expect(said.next).toBe('turn-miscounted');
    expect(said.sentence).toMatch(/^3 exhaust: read the small hand/i);
    expect(first(evidence)).toMatchObject({ weight: 'strong', ask: expect.stringMatching(ask) });
    expect(first(evidence)?.size).toContain(`a ratio of ${ratio}`);
    expect(said.headlines[0]).toMatch(/no name is given yet\. First: the answer to “Could one turn/);
    expect(said.headlines.join(' ')).not.toMatch(/\d\.\d{3}/);
    expect(said.all.quantities.find(({ id }) => id.startsWith('arm-ratio:'))?.value).toBeUndefined();
  });

  test('a turn too many is asked where it alone makes one', () => {
    // .641 / .320 = 2.003; .541 / .320 = 1.691; .641 / .420 = 1.526.
    const asks = heard(read(0.32, [0.641])).all.questions.map(({ ask }) => ask);
    expect(asks.filter((ask) => /^Could one turn/.test(ask))).toEqual([
      'Could one turn of the dial be missing at the lobe from passes 1, 2 and 3?',
      'Could one turn of the dial too many have been counted in pass 1, .641 in?',
    ]);
  });

  test('both looked at and right: the figure is told as it was read', () => {
    const once = lookedAt(read(0.338, [0.441]), 9_001);
    expect(heard(once).headlines[0]).toMatch(/no name is given yet\. First: .*at the lobe/);
    expect(heard(lookedAt(once, 9_002)).headlines[0]).toContain('1.305');
  });

  test.each([
    ['a 1.6', 0.338, 0.541],
    ['a 1.45 at its lower edge', 0.338, 0.481],
    ['a 1.8 at its upper edge', 0.338, 0.635],
  ])('%s is not asked', (_, lobe, lift) => {
    expect(heard(read(lobe, [lift, lift, lift])).asks).not.toContain('turn-miscounted');
  });

  test('gear whose ratio is of its lengths alone is not asked', () => {
    const ohc = read(0.338, [0.441], { engine: { gear: 'finger-follower' } });
    expect(heard(ohc).asks).not.toContain('turn-miscounted');
  });

  test('nor where a lash that nobody says may be in it', () => {
    const own = read(0.338, [0.441]);
    const evidence = { ...own, setUps: own.setUps.map((each) => ({ ...each, lash: 'not-said' as const })) };
    expect(heard(evidence).asks).not.toContain('turn-miscounted');
  });
});
