import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../assessment/plain-build.ts';

/* Growth over .004 in on one valve counts: common practice, no published source. Gaps invented. */

const log = (...lines: readonly (readonly ['set' | 'found', number])[]): LashEvidence[] =>
  lines.map(([moment, gap], at) => ({
    id: `lash-${at}`,
    line: at + 1,
    standing: true,
    cylinder: 6,
    valve: 'exhaust',
    gap: { value: gap * IN },
    readAs: `${gap} in`,
    moment,
    engine: 'cold',
    nut: 'held',
    day: `2026-03-0${at + 1}`,
  }));
const told = (lash: readonly LashEvidence[]) => assess({ ...PLAIN, lash });
const lashLine = ({ headlines }: ReturnType<typeof assess>) =>
  headlines.flatMap(({ step, sentence }) => (step === 'adjuster' ? [sentence] : []));

test('grown once, set again and held since: both are told, and nothing stops it', () => {
  const held = told(log(['set', 0.018], ['found', 0.024], ['set', 0.018], ['found', 0.019]));
  expect(held.stop).toEqual([]);
  expect(lashLine(held)).toEqual([
    'Lash of 6 exhaust, .019 in now. It grew by .006 in before it was set again; whether it has grown since can’t be told, feelers go in steps of .001 in. Why it grew is not known.',
  ]);
  const still = told(log(['set', 0.018], ['found', 0.025], ['set', 0.02], ['found', 0.02]));
  expect(lashLine(still)[0]).toMatch(/grew by \.007 in before it was set again, and has held since/);
});

test('grown again it stops; never grown, nothing is told', () => {
  const again = told(log(['set', 0.018], ['found', 0.024], ['set', 0.018], ['found', 0.026]));
  expect(again.stop.map(({ code }) => code)).toEqual(['lash-grew-again']);
  expect(lashLine(told(log(['set', 0.018], ['found', 0.019], ['set', 0.018], ['found', 0.019])))).toEqual([]);
});
