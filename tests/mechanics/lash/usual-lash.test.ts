import { describe, expect, test } from 'vitest';
import { unusualLash } from '../../../server/mechanics/lash/usual-lash.ts';

const IN = 0.0254;

type Given = Parameters<typeof unusualLash>[0];
const asked = (inches: number, more: Partial<Given> = {}) =>
  unusualLash({
    low: inches * IN,
    high: inches * IN,
    engine: 'hot',
    lifter: 'solid-roller',
    card: undefined,
    ...more,
  })?.code;

describe('a lash that was set', () => {
  test('without a card: solid roller .014 to .028, flat tappet .008 to .030, hot: common practice', () => {
    expect([0.013, 0.014, 0.028, 0.029].map((each) => asked(each))).toEqual([
      'lash-unusual',
      undefined,
      undefined,
      'lash-unusual',
    ]);
    expect([0.007, 0.008, 0.03, 0.031].map((each) => asked(each, { lifter: 'solid-flat' }))).toEqual([
      'lash-unusual',
      undefined,
      undefined,
      'lash-unusual',
    ]);
  });

  test('the card goes first, tuned by up to .004 (circle-track text); cold, .012 more may be heat (a chart)', () => {
    const card = { card: 0.01 * IN };
    expect([0.0055, 0.006, 0.014, 0.0145].map((each) => asked(each, card))).toEqual([
      'lash-unusual',
      undefined,
      undefined,
      'lash-unusual',
    ]);
    expect([0.026, 0.027].map((each) => asked(each, { ...card, engine: 'cold' }))).toEqual([
      undefined,
      'lash-unusual',
    ]);
  });

  test('between two gauges only what is outside for certain is asked', () => {
    expect(asked(0, { low: 0.026 * IN, high: 0.03 * IN })).toBeUndefined();
    expect(asked(0, { low: 0.029 * IN, high: 0.03 * IN })).toBe('lash-unusual');
  });

  test('a hydraulic lifter has no lash; nothing known, nothing asked', () => {
    expect(asked(0.01, { lifter: 'hydraulic-roller', card: 0.01 * IN })).toBe('lash-on-hydraulic');
    expect(asked(0, { lifter: 'hydraulic-flat' })).toBeUndefined();
    expect(asked(0.1, { lifter: undefined })).toBeUndefined();
  });
});
