import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, IN, lobe, passesOf } from './plain.ts';

/*
 * A hand that stood .010 off its zero after a lift over a lobe of .340: .010/.340 = .029 of the ratio, either way, until it
 * is read again (arithmetic). That a look at the zero puts nothing back is common practice, no published source.
 */
const ANSWER = {
  id: 'said',
  line: 90,
  setUpId: cleanSetUp.id,
  code: 'zero-not-returned',
  question: '',
  answer: 'not-found',
  found: false,
};

function told(passes: Evidence['passes']) {
  const { quantities, judgements, headlines, questions } = assess(
    buildOf([], {
      card: { assumedRatio: 1.6, intake: lobe(0.34), exhaust: lobe(0.345) },
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes,
      answers: [ANSWER],
    }),
  );
  const ratio = quantities.find(({ id }) => id.startsWith('arm-ratio:'));
  return {
    low: ratio?.low ?? Number.NaN,
    high: ratio?.high ?? Number.NaN,
    words: judgements.filter(({ id }) => id.startsWith('ratio:')).map(({ word }) => word),
    text: headlines.map(({ sentence }) => sentence).join('\n'),
    answered: questions.find(({ code }) => code === 'zero-not-returned')?.answered?.found,
  };
}

const off = (inches: readonly number[], zero: readonly number[]) =>
  passesOf('valve-lift', inches).map((pass, index) => ({ ...pass, zeroReturn: (zero[index] ?? 0) * IN }));
const LOBES = passesOf('lobe-lift', [0.34, 0.34, 0.34], { zeroReturn: 0 });
const LIFTS = [0.544, 0.544, 0.544];

describe('a zero that did not come back, looked at and not so', () => {
  test('.556 with .010: 1.606 lies in the interval, and it is not used for every clearance as it is', () => {
    const said = told([...LOBES, ...off([0.556, 0.556, 0.556], [0.01, 0.01, 0.01])]);
    expect(said.answered).toBe(false);
    expect(said.low).toBeLessThan(0.546 / 0.34);
    expect(said.high).toBeGreaterThan(0.566 / 0.34);
    expect(said.text).not.toMatch(/for every clearance/);
  });

  test('signs mixed, and one of the lobe: no word that agrees', () => {
    expect(told([...LOBES, ...off(LIFTS, [0.006, 0.007, -0.006])]).words).not.toContain('agrees');
    const lobes = passesOf('lobe-lift', [0.34, 0.34, 0.34], { zeroReturn: 0.012 * IN });
    expect(told([...lobes, ...off(LIFTS, [0, 0, 0])]).words).not.toContain('agrees');
  });

  test('three that come back to it agree', () => {
    expect(told([...LOBES, ...off(LIFTS, [0, 0, 0])]).words).toContain('agrees');
  });
});
