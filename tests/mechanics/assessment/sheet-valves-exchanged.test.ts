import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { answered, heard, sixteen, VERIFY } from './whole-sheet.ts';

/* A card of .340 and .365, all sold as 1.6; lobe and lift of 3 intake and 3 exhaust stand in one another's rows. Invented. */
const LOBES = { intake: 0.34, exhaust: 0.365 };
const build = (of: (place: string, side: keyof typeof LOBES) => number): Evidence => ({
  ...VERIFY,
  card: {
    assumedRatio: 1.6,
    intake: { lobeLift: LOBES.intake * IN },
    exhaust: { lobeLift: LOBES.exhaust * IN },
  },
  rockers: { soldAs: 1.6 },
  sheet: sixteen(
    1.6,
    (_, place) => {
      const lobe = of(place, place.endsWith('intake') ? 'intake' : 'exhaust');
      return { lobe, lift: lobe * 1.6 };
    },
    { lash: 'zero' },
  ),
});
const EXCHANGED = build((place, side) =>
  place === '3 intake' ? LOBES.exhaust : place === '3 exhaust' ? LOBES.intake : LOBES[side],
);
const asked = (evidence: Evidence) =>
  heard(evidence).all.questions.filter(({ code }) => code === 'valve-swapped');

describe('intake and exhaust of one cylinder, entered the one for the other', () => {
  test('are asked about once, and neither is set against the others till then', () => {
    const { headlines } = heard(EXCHANGED);
    expect(asked(EXCHANGED).map(({ weight, ask }) => [weight, ask])).toEqual([
      ['strong', 'Could intake and exhaust of cylinder 3 be entered the one for the other?'],
    ]);
    for (const place of ['3 intake', '3 exhaust'])
      expect(headlines.join('\n')).toContain(`${place} is not set against the others yet`);
  });

  test('one answer is of both, and holds for the one that is left when the other was put right', () => {
    const found = answered(EXCHANGED, 'valve-swapped', 'found');
    expect(asked(found)).toHaveLength(1);
    const putRight = (each: SheetEvidence): SheetEvidence[] =>
      each.cylinder === 3 && each.valve === 'intake'
        ? [
            { ...each, standing: false },
            {
              ...each,
              id: `${each.id}-right`,
              line: 20_000,
              reading: { value: LOBES.intake * IN * (each.kind === 'lobe-lift' ? 1 : 1.6) },
            },
          ]
        : [each];
    const left = asked({ ...found, sheet: found.sheet.flatMap(putRight) });
    expect(left.map(({ about, answered: given }) => [about, given?.found])).toEqual([
      [{ of: 'valve', cylinder: 3, valve: 'exhaust' }, true],
    ]);
    const not = heard(answered(EXCHANGED, 'valve-swapped', 'not-found'));
    expect(not.headlines.join('\n')).not.toContain('not set against the others');
  });

  test('where the other valve reads its own lobe, wear is told before it', () => {
    const worn = build((place, side) => (place === '6 exhaust' ? LOBES.intake : LOBES[side]));
    expect(asked(worn).map(({ weight }) => weight)).toEqual(['weak']);
    expect(heard(worn).stop.join('\n')).toContain('the lobe of 6 exhaust is .025 in down on the others');
  });
});

test('a valve that is low on a hydraulic lifter: the lifter goes before the hand of the dial', () => {
  const low: Evidence = {
    ...VERIFY,
    engine: { ...VERIFY.engine, lifter: 'hydraulic-roller' },
    rockers: { soldAs: 1.6 },
    sheet: sixteen(1.6, (_, place) => (place === '5 intake' ? { lift: 0.54 } : {}), { lifter: 'hydraulic' }),
  };
  const { headlines } = heard(low);
  expect(headlines[0]).toContain('one that sinks reads low, so that comes before the rocker');
  // .540 the other way round on the dial is .560, which 1.6 makes of .350.
  const solid = low.sheet.map((each) => ({ ...each, lifter: 'locked' as const }));
  expect(heard({ ...low, sheet: solid }).headlines[0]).toContain('Could the hand have been read backwards?');
});
