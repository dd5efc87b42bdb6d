import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { answered, armOf, EIGHT, heard, sixteen } from './whole-sheet.ts';

/*
 * A sheet that was read with arms sold as 1.5, one of them odd; they came off, and a set of 1.6 is on, of which the arm on
 * that valve is stamped 1.7. Figures invented: 1.594 is 1.5 × 1.7 / 1.6.
 */
const CYLINDERS = [1, 2, 3, 4, 5, 6, 7, 8];
const seatsOf = (name: string) =>
  CYLINDERS.map((cylinder) => ({ cylinder, valve: 'intake' as const, armId: `arm-${name}-${cylinder}` }));
const arms = (name: string, stampOf: (cylinder: number) => string) =>
  CYLINDERS.map((cylinder) => armOf(`${name}-${cylinder}`, { ratioStamp: stampOf(cylinder) }));
const intakesOf = (sheet: readonly SheetEvidence[], more: (cylinder: number) => Partial<SheetEvidence>) =>
  sheet
    .filter(({ valve }) => valve === 'intake')
    .map((entry) => (entry.kind === 'valve-lift' ? { ...entry, ...more(entry.cylinder) } : entry));

describe('lifts of arms that came off', () => {
  const off = { comesOff: true, soldAsThen: 1.5 } as const;
  const changed: Evidence = {
    ...EIGHT,
    rockers: { soldAs: 1.6 },
    arms: arms('new', (cylinder) => (cylinder === 5 ? '1.7' : '')),
    seats: seatsOf('new'),
    sheet: intakesOf(
      sixteen(1.5, ({ lobe }, at) => (at === '5 intake' ? { lift: lobe * 1.594 } : {})),
      () => off,
    ),
  };
  const odd = heard(changed)
    .all.details.sheet.sides.flatMap((side) => side.odd)
    .find(({ cylinder }) => cylinder === 5);

  test('are set against no stamp of the arms that are on now', () => {
    expect(odd).toBeDefined();
    expect(odd?.cause).not.toBe('mark');
    expect(odd?.asMarked).toBeUndefined();
  });
});

describe('a side of which one arm is stamped 1.6 and the others were sold as 1.6', () => {
  const sideOf = (then: (cylinder: number) => Partial<SheetEvidence>, soldAs: number): string | undefined => {
    const mixed: Evidence = {
      ...EIGHT,
      rockers: { soldAs },
      arms: arms('on', (cylinder) => (cylinder === 1 ? '1.6' : '')),
      seats: seatsOf('on'),
      sheet: intakesOf(sixteen(1.6), then),
    };
    return heard(answered(mixed, 'lash-not-said', 'zero')).all.judgements.find(
      ({ id }) => id === 'side:light:intake',
    )?.sentence;
  };

  test('says so of then, where they are sold as another now', () => {
    const then = { comesOff: true, soldAsThen: 1.6 } as const;
    expect(sideOf((cylinder) => (cylinder === 1 ? { armId: 'arm-on-1' } : then), 1.5)).toContain(
      'the 1.6 they were sold as when they were read',
    );
  });

  test('and of now, where some were read with those that are on', () => {
    const then = { comesOff: true, soldAsThen: 1.6 } as const;
    expect(sideOf((cylinder) => (cylinder < 5 ? { armId: `arm-on-${cylinder}` } : then), 1.6)).toContain(
      'the 1.6 they are sold as',
    );
  });
});
