import { describe, expect, test } from 'vitest';
import type { SetUpEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { buildOf, cleanSetUp, IN, lobe } from './plain.ts';

const assess = assessAsTold('ratio-lifts');

/** `net lift = gross − lash`, the lash at the valve tip: trade-practice 2.9 and 5; the sums by hand. */
function liftsOf(state: Partial<SetUpEvidence>, lash?: number) {
  const card = { intake: lobe(0.348, lash === undefined ? {} : { lash }), exhaust: lobe(0.339) };
  const build = buildOf([0.541, 0.541], { setUps: [{ ...cleanSetUp, ...state }], card });
  const { quantities } = assess(build);
  const inches = (code: string) => {
    const found = quantities.find(({ id }) => id === `${code}:${cleanSetUp.id}`);
    return found?.value === undefined
      ? undefined
      : { in: Number((found.value / IN).toFixed(6)), basis: found.basis };
  };
  return { read: inches('valve-lift'), gross: inches('gross-lift'), net: inches('net-lift-read') };
}

describe('the lash is counted once', () => {
  test('a lift read at zero lash is the gross lift; the card’s lash comes off it once', () => {
    expect(liftsOf({ lash: 'zero' }, 0.016)).toEqual({
      read: { in: 0.541, basis: 'measured' },
      gross: { in: 0.541, basis: 'measured' },
      net: { in: 0.525, basis: 'calculated' },
    });
  });

  test('a lift read with the lash set carries it: net is the lift as read, gross has the setting put back', () => {
    expect(liftsOf({ lash: 'set', lashSetting: 0.016 * IN }, 0.016)).toEqual({
      read: { in: 0.541, basis: 'measured' },
      gross: { in: 0.557, basis: 'calculated' },
      net: { in: 0.541, basis: 'measured' },
    });
  });

  test('with the setting not known there is no gross lift, whatever the card asks for', () => {
    expect(liftsOf({ lash: 'set' }, 0.016)).toEqual({
      read: { in: 0.541, basis: 'measured' },
      gross: undefined,
      net: { in: 0.541, basis: 'measured' },
    });
  });

  test('with the lash not said it is a lift as read and nothing more', () => {
    const { gross, net } = liftsOf({ lash: 'not-said' }, 0.016);
    expect([gross, net]).toEqual([undefined, undefined]);
  });

  test('the ratio of a lift with its setting put back is calculated: .557 over .348 is 1.6006', () => {
    const build = buildOf([0.541], { setUps: [{ ...cleanSetUp, lash: 'set', lashSetting: 0.016 * IN }] });
    const ratio = assess(build).quantities.find(({ id }) => id === `set-up-ratio:${cleanSetUp.id}`);
    expect(ratio?.value).toBeCloseTo(0.557 / 0.348, 9);
    expect(ratio?.basis).toBe('calculated');
    expect(ratio?.lacks.join()).toContain('zero lash');
  });
});
