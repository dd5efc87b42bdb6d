import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { read } from './plain-build.ts';
import { armOf, EIGHT, sixteen } from './whole-sheet.ts';

const A = armOf('Arm A');
const B = armOf('Arm B');

/*
 * 5 intake .016 low with either arm, and .016 is an ordinary lash: left in, it stays on its valve as a position does. An
 * arm takes its ratio along, and no lash. Common practice, no published source.
 */
function swapped(low: 'stays' | 'goes', how: Partial<SheetEvidence> = {}, more: Partial<Evidence> = {}) {
  const isLow = (place: string, arm: string) => (low === 'stays' ? place === '5 intake' : arm === A.id);
  const lift = (place: string, arm: string) => (isLow(place, arm) ? 0.544 : 0.56);
  const before = sixteen(1.6, (_, place) =>
    place === '5 intake' || place === '6 intake'
      ? { lobe: 0.35, lift: lift(place, place === '5 intake' ? A.id : B.id) }
      : {},
  ).map((each) =>
    each.kind === 'valve-lift' && each.valve === 'intake' && (each.cylinder === 5 || each.cylinder === 6)
      ? { ...each, armId: each.cylinder === 5 ? A.id : B.id }
      : each,
  );
  const after = [
    read(5, 'intake', 'valve-lift', lift('5 intake', B.id), { armId: B.id }),
    read(6, 'intake', 'valve-lift', lift('6 intake', A.id), { armId: A.id }),
  ];
  const { headlines, next, questions } = assess({
    ...EIGHT,
    card: { ...EIGHT.card, intake: { lobeLift: EIGHT.card.intake.lobeLift ?? 0 }, exhaust: {} },
    arms: [A, B],
    seats: [
      { cylinder: 5, valve: 'intake', armId: B.id },
      { cylinder: 6, valve: 'intake', armId: A.id },
    ],
    sheet: [...before, ...after].map((each) => ({ ...each, ...how })),
    ...more,
  });
  return {
    text: headlines.map(({ sentence }) => sentence).join('\n'),
    next: next?.action,
    codes: questions.map(({ code }) => code),
  };
}

describe('a swap of which the lash is not known to have been out', () => {
  test('what stays on the valve is no position yet, and no pushrod moves: the lash is asked first', () => {
    const { text, next, codes } = swapped('stays');
    expect(text).toMatch(
      /cannot be told yet: \.016 in stayed on 5 intake, and lash that is left in stays there/,
    );
    expect(text).not.toMatch(/It is the position/);
    expect(next).toBe('lash-not-said');
    expect(codes).not.toContain('pushrod-or-valve');
  });

  test('left in: both are read at zero', () => {
    const { next, codes } = swapped('stays', { lash: 'set' });
    expect(next).toMatch(/^(read-at-zero-lash|lash-not-said)$/);
    expect(codes).not.toContain('pushrod-or-valve');
  });

  test('out, or taken up by a hydraulic lifter: it is the position', () => {
    expect(swapped('stays', { lash: 'zero' }).text).toMatch(/It is the position, not the arm/);
    const locked = { engine: { ...EIGHT.engine, lifter: 'hydraulic-roller' as const } };
    expect(swapped('stays', { lifter: 'locked' }, locked).text).toMatch(/It is the position, not the arm/);
  });

  test('what goes with the arm is no lash', () => {
    expect(swapped('goes').text).toMatch(/went with Arm A, low on both valves\. It is the part/);
  });
});
