import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { on } from './eight.ts';

/* Columns of a sheet beside one another. A column copied: trade practice 7, row 16; springs: the same, 2.5. */

const CLEAN = on(() => 0);

/** What the figures raise: how the lash was is asked of every sheet that does not say it. */
const codes = (evidence: Evidence): unknown[] =>
  assess(evidence)
    .questions.filter(({ code }) => code !== 'lash-not-said')
    .map(({ code, about, weight }) => [code, about.of === 'side' ? about.valve : about.of, weight]);

const liftOf = ({ sheet }: Evidence, cylinder: number, valve: string, kind: string) =>
  sheet.find((each) => each.cylinder === cylinder && each.valve === valve && each.kind === kind)?.reading;

describe('one column entered twice', () => {
  test('the intakes’ lifts for the exhausts: asked of the exhausts, which they do not fit, and nothing else is', () => {
    const copied = {
      ...CLEAN,
      sheet: CLEAN.sheet.map((each) =>
        each.valve === 'exhaust' && each.kind === 'valve-lift'
          ? { ...each, reading: liftOf(CLEAN, each.cylinder, 'intake', 'valve-lift') ?? each.reading }
          : each,
      ),
    };
    expect(codes(copied)).toEqual([['copied-reading', 'exhaust', 'strong']]);
    expect(assess(copied).next).toMatchObject({ action: 'copied-reading' });
    const said = assess(copied).headlines.map(({ sentence }) => sentence);
    expect(said.join('\n')).not.toMatch(/% over/);
  });

  test('lobe lifts as valve lifts: neither the card nor a turn of the dial is asked', () => {
    const copied = {
      ...CLEAN,
      sheet: CLEAN.sheet.flatMap((each, at) =>
        each.kind === 'valve-lift'
          ? [{ ...each, reading: liftOf(CLEAN, each.cylinder, each.valve, 'lobe-lift') ?? each.reading }]
          : [{ ...each, id: `${each.id}-${at}` }],
      ),
    };
    expect(codes(copied)).toEqual([
      ['copied-reading', 'intake', 'strong'],
      ['copied-reading', 'exhaust', 'strong'],
    ]);
  });

  test('intakes and exhausts of one lift, read honestly to .001, are not asked', () => {
    const alike: Evidence = {
      ...CLEAN,
      card: { ...CLEAN.card, exhaust: { lobeLift: 0.361 * IN } },
      sheet: CLEAN.sheet.map((each) => {
        const off = [0, 0.001, -0.001, 0.002, 0, -0.001, 0.001, -0.002];
        const own = off[(each.cylinder + (each.valve === 'exhaust' ? 3 : 0)) % 8] ?? 0;
        return { ...each, reading: { value: (each.kind === 'lobe-lift' ? 0.361 : 0.578 + own) * IN } };
      }),
    };
    expect(codes(alike).filter((each) => JSON.stringify(each).includes('copied'))).toEqual([]);
  });
});

describe('one bank on a light spring, the other on the running one', () => {
  const mixed = {
    ...CLEAN,
    sheet: CLEAN.sheet.map((each) =>
      each.cylinder % 2 === 0 && each.kind === 'valve-lift'
        ? {
            ...each,
            spring: 'running' as const,
            reading: { value: (each.reading.value ?? 0) - 0.015 * IN },
          }
        : each,
    ),
  };

  test('said once that the two are not compared, and the second bank on the light spring is next', () => {
    const assessed = assess(mixed);
    expect(assessed.headlines[0]?.sentence).toMatch(
      /^The valves of 1, 3, 5 and 7 were read on a light spring, those of 2, 4, 6 and 8 on the running one\./,
    );
    expect(assessed.next).toMatchObject({ action: 'read-on-light-spring' });
    expect(assessed.next?.sentence).toMatch(
      /^Read the lifts of 2, 4, 6 and 8 on the light spring, at zero lash/,
    );
  });

  test('read on both springs, it tells the deflection and nothing is missing', () => {
    const both = {
      ...mixed,
      sheet: [
        ...mixed.sheet,
        ...CLEAN.sheet
          .filter(({ cylinder }) => cylinder % 2 === 0)
          .map((each) => ({ ...each, id: `${each.id}-again` })),
      ],
    };
    expect(assess(both).judgements.some(({ id }) => id.startsWith('side-springs'))).toBe(false);
  });
});
