import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/piston-to-valve.ts';
import { body, number, profile, readings, refused } from './helpers/piston-to-valve-engine.ts';
import { processorTimeOf } from './helpers/processor-time.ts';
import { deg, inches } from './helpers/quantities.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

describe('input that can’t be', () => {
  const { profile: _card, ...rest } = body();
  test('neither a card nor readings, or both, or one reading', () => {
    expect(refused(rest)).toEqual(['/profile required']);
    expect(refused(body({ lifts: readings(0, 20, 2) }))).toEqual(['/lifts not-allowed']);
    expect(refused({ ...rest, lifts: readings(0, 0, 2) })).toEqual(['/lifts required']);
    expect(refused({ ...rest, profile: 3, ratio: 0 })).toEqual([
      '/profile not-allowed',
      '/ratio out-of-range',
    ]);
  });
  test('a card that no lobe has, at its place within', () => {
    const card = profile(0.5, 106, 721);
    expect(refused(body({ profile: card }))).toEqual(['/profile/durations/0/duration impossible-input']);
    const { centreline: _gone, ...half } = profile(0.5, 106, 280);
    expect(refused(body({ profile: { ...half, side: 'intake' } }))).toEqual([
      '/profile/centreline required',
      '/profile/side unknown-field',
    ]);
  });
  test('readings that repeat an angle, or pass a cycle', () => {
    const lifts = [0, 4, 4, 8].map((angle) => ({ crankAngle: deg(angle), lift: inches(0.1) }));
    expect(refused({ ...rest, lifts })).toEqual(['/lifts/2/crankAngle impossible-input']);
    const long = [-400, 0, 400].map((angle) => ({ crankAngle: deg(angle), lift: inches(0.1) }));
    expect(refused({ ...rest, lifts: long })).toEqual(['/lifts/2/crankAngle impossible-input']);
  });
  test('a lash that takes up the lift, a rod too short, a valve lying down', () => {
    expect(refused(body({ lash: inches(0.5) }))).toEqual(['/lash impossible-input']);
    expect(refused(body({ rodLength: inches(1.7) }))).toEqual([
      '/rodLength impossible-input',
      '/stroke impossible-input',
    ]);
    expect(refused(body({ valveAngle: deg(90) }))).toEqual(['/valveAngle impossible-input']);
    expect(refused(body({ valveAngle: deg(-5), closedGapAtTdc: inches(-0.1) }))).toEqual([
      '/valveAngle out-of-range',
      '/closedGapAtTdc out-of-range',
    ]);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body({ lash: inches(0.01), advance: deg(2), pinOffset: inches(0.03) }));
  }, 60_000);
});

test('2 000 readings are used a hundred times each at the most', () => {
  const { profile: _card, ...rest } = body();
  const lifts = Array.from({ length: 2000 }, (_, index) => ({
    crankAngle: deg(-360 + index * 0.36),
    lift: inches(0.2 + 0.1 * Math.sin(index)),
  }));
  const calculated = processorTimeOf(() => {
    expect(Number.isFinite(number({ ...rest, lifts }, 'margin'))).toBe(true);
  });
  expect(calculated).toBeLessThan(200_000);
});
