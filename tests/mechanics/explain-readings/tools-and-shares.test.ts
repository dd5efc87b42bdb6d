import { describe, expect, it } from 'vitest';
import { lobesDiffer, openCase } from '../../../server/mechanics/explain-readings/case.ts';
import { enumerateHypotheses } from '../../../server/mechanics/explain-readings/hypotheses.ts';
import { mistakesPossible } from '../../../server/mechanics/explain-readings/mistakes.ts';
import type { ExplainInput, ExplainReading } from '../../../server/mechanics/explain-readings/types.ts';
import { believe } from '../../../server/mechanics/explain-readings/update.ts';
import { lobe, valve } from './cases.ts';

const input = (readings: readonly ExplainReading[], more: Partial<ExplainInput> = {}): ExplainInput => ({
  nominals: [1.6],
  cardLobeLift: 0.35,
  readings,
  ...more,
});

describe('passes read with one tool are off by the same', () => {
  // A limit either way is a rectangle: its variance is a third of the square (GUM, 4.3.7).
  it('so many passes know no more than the tool: normal prior and likelihood, precisions add', () => {
    const tool = { errorLimit: 0.004 };
    const given = openCase(input([lobe(0.352, tool), lobe(0.3515, tool), lobe(0.352, tool)]));
    const belief = believe(given, enumerateHypotheses(given, mistakesPossible(given)));
    const prior = 3 / 0.0025 ** 2;
    const each = 1 / (0.0012 ** 2 + (3 * 0.004 ** 2) / 3);
    const precision = prior + 3 * each;
    expect(belief.means[1]).toBeCloseTo((prior * 0.35 + each * (0.352 + 0.3515 + 0.352)) / precision, 12);
    expect(belief.covariances[9]).toBeCloseTo(1 / precision, 14);
  });

  it('those of the same kind, of the same set-up, with a tool that is said: each counts them', () => {
    const tool = { errorLimit: 0.004 };
    const { readings } = openCase(
      input([
        valve(0.56, tool),
        valve(0.561),
        valve(0.562, { ...tool, setUp: 1 }),
        lobe(0.35, tool),
        valve(0.559, tool),
      ]),
    ).input;
    expect(readings.map(({ sharing }) => sharing)).toEqual([2, undefined, 1, 1, 2]);
    expect(readings.map(({ value }) => value)).toEqual([0.56, 0.561, 0.562, 0.35, 0.559]);
  });
});

describe('a lift out of all proportion to its lobe: under .8 or over 2.6 of it (design note, judgement)', () => {
  const odd = (reading: ExplainReading, more: Partial<ExplainInput> = {}) =>
    openCase(input([reading], { assumptions: { unitRatioLow: 0.75, unitRatioHigh: 2.5 }, ...more }))
      .oddReadings[0];
  // Lobes of an eighth, so that the quotients are exact.
  it.each([
    [0.09375, false],
    [0.0937, true],
    [0.3125, false],
    [0.3126, true],
    [0.2, false],
  ])('%f over .125: %s', (lift, wanted) => {
    expect(odd(valve(lift), { cardLobeLift: 0.125 })).toBe(wanted);
    // The lobe lift that it was read at goes before the card's.
    expect(odd(valve(lift, { atLobeLift: 0.125 }), { cardLobeLift: 9 })).toBe(wanted);
    // Neither known, a usual lobe.
    const { cardLobeLift: _, ...noCard } = input([valve(lift)]);
    const assumptions = { unitRatioLow: 0.75, unitRatioHigh: 2.5, lobeMean: 0.125 };
    expect(openCase({ ...noCard, assumptions }).oddReadings).toEqual([wanted]);
  });

  it('a lobe lift never is', () => {
    expect(odd(lobe(8.9))).toBe(false);
  });
});

describe('lobes of one cylinder that may be mistaken for one another', () => {
  const differ = (card: number | undefined, other: number | undefined) =>
    lobesDiffer(
      openCase({
        nominals: [1.6],
        readings: [valve(0.56)],
        assumptions: { lobesDiffer: 0.0625 },
        ...(card === undefined ? {} : { cardLobeLift: card }),
        ...(other === undefined ? {} : { otherLobeLift: other }),
      }),
    );
  it('only where both are known and they are further apart than that', () => {
    expect(differ(0.375, 0.3125)).toBe(false);
    expect(differ(0.375, 0.3124)).toBe(true);
    expect(differ(0.3124, 0.375)).toBe(true);
    expect([differ(undefined, 0.375), differ(0.375, undefined), differ(undefined, undefined)]).toEqual([
      false,
      false,
      false,
    ]);
  });
});

describe('what the first reading of the valve says of the lifter', () => {
  const hydraulic = (readings: readonly ExplainReading[]) => openCase(input(readings)).hydraulic;
  it('a lobe before it says nothing, and a lifter not said counts as hydraulic', () => {
    const loose = { lifter: 'hydraulic' } as const;
    expect(hydraulic([lobe(0.35, loose), valve(0.56), valve(0.56, loose)])).toBe(false);
    expect(hydraulic([lobe(0.35), valve(0.56, loose)])).toBe(true);
    expect(hydraulic([{ of: 'valve-lift', value: 0.56, pass: 1, setUp: 0 }])).toBe(true);
    expect(hydraulic([lobe(0.35, loose)])).toBe(false);
  });
});
