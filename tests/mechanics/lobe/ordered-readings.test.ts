import { expect, test } from 'vitest';
import { orderedReadings } from '../../../server/mechanics/lobe/check-readings.ts';
import { faultsOf } from '../helpers/faults-of.ts';

const RAD = Math.PI / 180;
const at = (...degrees: readonly number[]) =>
  degrees.map((degree, index) => ({ crankAngle: degree * RAD, lift: index / 1000 }));
const refused = (...degrees: readonly number[]) =>
  faultsOf(() => orderedReadings(at(...degrees), '/readings'));

test('readings in any order come back in the order of the crank, each with its own lift', () => {
  const ordered = orderedReadings(at(90, -30, 170, 10), '');
  expect(ordered.map(({ lift }) => lift)).toEqual([0.001, 0.003, 0, 0.002]);
  expect(orderedReadings([], '')).toEqual([]);
});

test('a crank angle that stands twice is blamed on the later item, three times on the two later', () => {
  expect(refused(90, 10, 90)).toEqual(['/readings/2/crankAngle impossible-input']);
  expect(refused(10, 90, 10, 10)).toEqual([
    '/readings/2/crankAngle impossible-input',
    '/readings/3/crankAngle impossible-input',
  ]);
});

test('a whole cycle is taken, more is not: the last one is blamed', () => {
  expect(refused(-100, 0, 620)).toEqual([]);
  expect(refused(0, 720)).toEqual([]);
  expect(refused(621, 0, -100)).toEqual(['/readings/0/crankAngle impossible-input']);
  expect(refused(-400, -360, 360)).toEqual(['/readings/2/crankAngle impossible-input']);
});

test('a hundred faults are told, not all of a long list', () => {
  expect(refused(...Array.from({ length: 200 }, () => 45))).toHaveLength(100);
});
