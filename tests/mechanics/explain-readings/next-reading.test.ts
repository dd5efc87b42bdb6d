import { describe, expect, it } from 'vitest';
import { openCase } from '../../../server/mechanics/explain-readings/case.ts';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import { offersFor } from '../../../server/mechanics/explain-readings/offers.ts';
import type { ExplainInput, ExplainReading } from '../../../server/mechanics/explain-readings/types.ts';
import { LIST, lobe, valve } from './cases.ts';

const BASE: ExplainInput = { nominals: LIST, mark: 1.6, cardLobeLift: 0.35, readings: [] };
const ENGINE = { spring: 'running', lifter: 'hydraulic' } as const;

function actions(readings: readonly ExplainReading[], somethingElse = 0, more: Partial<ExplainInput> = {}) {
  return offersFor(openCase({ ...BASE, ...more, readings }), somethingElse).map(({ action }) => action);
}

describe('what is offered', () => {
  it('is everything at first, the other valve only when nothing else fits', () => {
    const first = [valve(0.56, ENGINE)];
    expect(actions(first)).toEqual([
      'read-back',
      'one-more-pass',
      'lash-to-zero',
      'align-plunger',
      'valve-lift-at-.200',
      'lobe-at-lifter',
      'light-spring-solid-lifter',
    ]);
    expect(actions(first, 0.3)).toContain('rocker-on-another-valve');
    expect(actions(first, 0.29)).not.toContain('rocker-on-another-valve');
  });

  it('is each action till it is done; passes and lobe till there are three', () => {
    const counted = { counted: true } as const;
    expect(actions([valve(0.56, counted), valve(0.56, counted)])).toContain('one-more-pass');
    expect(actions([valve(0.56, counted), valve(0.56, counted), valve(0.56, counted)])).not.toContain(
      'one-more-pass',
    );
    expect(actions([lobe(0.35), lobe(0.35)])).toContain('lobe-at-lifter');
    expect(actions([lobe(0.35), lobe(0.35), lobe(0.35)])).not.toContain('lobe-at-lifter');
    expect(actions([valve(0.56, { lashSet: true })])).not.toContain('lash-to-zero');
    expect(actions([valve(0.56, { aligned: true })])).not.toContain('align-plunger');
    expect(actions([valve(0.32, { atLobeLift: 0.2 })])).not.toContain('valve-lift-at-.200');
    expect(actions([valve(0.56)])).not.toContain('light-spring-solid-lifter');
    expect(actions([valve(0.56, { otherValve: true })], 0.5)).not.toContain('rocker-on-another-valve');
    const asked = { answers: [{ ask: 'read-back', found: false }] } as const;
    expect(actions([valve(0.56)], 0, asked)).not.toContain('read-back');
  });

  it('takes 20 minutes to the light spring, 25 with a hydraulic lifter', () => {
    const minutes = (reading: ExplainReading) =>
      offersFor(openCase({ ...BASE, readings: [reading] }), 0).find(
        ({ action }) => action === 'light-spring-solid-lifter',
      )?.minutes;
    expect(minutes(valve(0.56, { spring: 'running' }))).toBe(20);
    expect(minutes(valve(0.56, ENGINE))).toBe(25);
  });

  it('keeps the flags of the last reading and counts the pass on', () => {
    const given = openCase({
      ...BASE,
      readings: [valve(0.56, { ...ENGINE, lashSet: true, pass: 2, setUp: 1 })],
    });
    const align = offersFor(given, 0).find(({ action }) => action === 'align-plunger')?.reading;
    expect(align).toMatchObject({ lashSet: true, aligned: true, pass: 3, setUp: 1, spring: 'running' });
    const light = offersFor(given, 0).find(({ action }) => action === 'light-spring-solid-lifter')?.reading;
    expect(light).toMatchObject({ lashSet: true, spring: 'light', lifter: 'solid', setUp: 2 });
  });
});

describe('a new set-up of the indicator', () => {
  it('frees the second reading of a zero that moved', () => {
    const said = { ...BASE, lash: 'zero', readings: [valve(0.58, { counted: true })] } as const;
    const second = { counted: true, lashSet: true, aligned: true, pass: 2 } as const;
    const again = explainReadings({
      ...said,
      readings: [...said.readings, valve(0.56, { ...second, setUp: 1 })],
    });
    const same = explainReadings({ ...said, readings: [...said.readings, valve(0.56, second)] });
    const moved = (result: typeof again) =>
      result.explanations
        .filter(({ causes }) => causes.includes('zero-moved'))
        .reduce((sum, { probability }) => sum + probability, 0);
    expect(moved(again)).toBeGreaterThan(10 * moved(same) + 0.05);
  });

  it('is foreseen: it tells more than the same reading without it would', () => {
    // A zero that surely moved: a light reading on a new set-up settles it, so its outcome is narrow.
    const result = explainReadings({
      ...BASE,
      lash: 'zero',
      readings: [
        valve(0.59, { spring: 'running', lifter: 'solid', counted: true, lashSet: true, aligned: true }),
      ],
      answers: [{ ask: 'zero-return', found: true }],
      assumptions: { zeroMoved: 0.9, minutesLightSpring: 0.1 },
    });
    expect(result.nextReading?.action).toBe('light-spring-solid-lifter');
    const moved = result.nextReading?.outcomes.find(
      ({ cause, nominal }) => cause === 'zero-moved' && nominal === 1.6,
    );
    expect(moved?.expected).toBeLessThan(0.58);
  });
});

describe('an answer', () => {
  const base: ExplainInput = {
    nominals: LIST,
    cardLobeLift: 0.362,
    otherLobeLift: 0.3,
    lash: 'zero',
    readings: [valve(0.48)],
  };
  const share = (result: ReturnType<typeof explainReadings>, cause: string) =>
    result.explanations
      .filter(({ causes }) => causes.some((one) => one === cause))
      .reduce((sum, { probability }) => sum + probability, 0);

  it('moves the odds by its own chances: .9 to .01 when the read-back finds something', () => {
    const before = explainReadings(base);
    const found = explainReadings({ ...base, answers: [{ ask: 'read-back', found: true }] });
    const odds = (result: typeof before) =>
      (result.explanations.find((one) => one.causes[0] === 'wrong-valve' && one.nominal === 1.6)
        ?.probability ?? 0) /
      (result.explanations.find((one) => one.causes[0] === 'turn-too-few' && one.nominal === 1.6)
        ?.probability ?? 0);
    expect(share(found, 'turn-too-few')).toBeLessThan(share(before, 'turn-too-few'));
    const foundLow = explainReadings({
      ...base,
      answers: [{ ask: 'read-back', found: true }],
      assumptions: { listFrom: 1e-6 },
    });
    expect(odds(foundLow) / odds(before)).toBeCloseTo(90, 6);
  });
});
