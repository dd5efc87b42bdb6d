import { describe, expect, test } from 'vitest';
import { body, number, refused } from '../helpers/piston-to-valve-engine.ts';
import { deg, inches } from '../helpers/quantities.ts';

describe('no lift is left', () => {
  test('the lash is named where it takes the lift up, as the rocker makes it at the valve', () => {
    expect(refused(body({ ratio: 2, lash: inches(1) }))).toEqual(['/lash impossible-input']);
    expect(number(body({ ratio: 2, lash: inches(0.6) }), 'margin')).toBeGreaterThan(0);
  });

  test('without lash the readings are named that have none, or a ratio that makes none', () => {
    const { profile: _card, ...rest } = body();
    const lifts = [0, 4, 8].map((angle) => ({ crankAngle: deg(angle), lift: inches(0) }));
    expect(refused({ ...rest, lifts })).toEqual(['/lifts impossible-input']);
    expect(refused({ ...rest, lifts, lash: inches(0.01) })).toEqual(['/lash impossible-input']);
    expect(refused(body({ ratio: 5e-324 }))).toEqual(['/ratio impossible-input']);
  });
});

test('all that can’t be is told at once: the crank drive, the valve and the lash', () => {
  const faults = ['/rodLength impossible-input', '/stroke impossible-input', '/valveAngle impossible-input'];
  expect(
    refused(body({ rodLength: inches(1.7), valveAngle: deg(90), lash: inches(0.5) })).toSorted(),
  ).toEqual(['/lash impossible-input', ...faults]);
});

test('a pin so far off that the crank can’t come round, told with the rest', () => {
  // Rod less throw is 3.96: a pin 4 off the bore is out of its reach.
  const told = refused(body({ pinOffset: inches(4), valveAngle: deg(90) }));
  expect(told).toContain('/pinOffset impossible-input');
  expect(told).toContain('/valveAngle impossible-input');
});
