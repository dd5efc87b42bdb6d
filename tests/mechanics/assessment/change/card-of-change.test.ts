import { expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, SET_UP } from '../plain-build.ts';

/* A card of .310 × 1.5 = .465, and a 1.6 that is planned and was read: .310 × 1.6 = .496. The engine is invented. */
const READ: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: {
    assumedRatio: 1.5,
    intake: { lobeLift: 0.31 * IN, lash: 0.02 * IN, valveLift: 0.465 * IN },
    exhaust: {},
  },
  rockers: { soldAs: 1.5, planned: 1.6 },
  setUps: [SET_UP],
  passes: [1, 2, 3].map((pass) => ({
    id: `pass-${pass}`,
    line: pass,
    standing: true,
    setUpId: SET_UP.id,
    kind: 'valve-lift',
    pass,
    value: 0.496 * IN,
    readAs: '.496 in',
    counted: true,
  })),
};
const codes = (evidence: Evidence) => assess(evidence).questions.map(({ code }) => code);

test('of a planned change the card is for what was sold before: neither it nor its lift is doubted for that', () => {
  const arm = { id: 'new', name: 'new', ratioStamp: '1.6', otherNumber: '', boxLabel: '' };
  const stamped = { ...READ, arms: [arm], setUps: [{ ...SET_UP, armId: 'new' }] };
  for (const evidence of [READ, stamped]) {
    expect(codes(evidence)).not.toContain('card-ratio');
    expect(codes(evidence)).not.toContain('lash-formula');
  }
});

test('a card for a third ratio is asked about as ever', () => {
  expect(codes({ ...READ, card: { ...READ.card, assumedRatio: 1.8 } })).toContain('card-ratio');
});
