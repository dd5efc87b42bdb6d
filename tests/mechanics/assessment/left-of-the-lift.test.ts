import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { buildOf, cleanSetUp, lobe, passesOf, stamped } from './plain.ts';

/*
 * What a lift is off its card's is made of three: the two ratios, the lobe, the arm (arithmetic). An arm made with room
 * for flex reads over its mark, never under (common practice, no published source).
 */
interface Read {
  readonly card: readonly [number, number];
  readonly assumed: number;
  readonly stamp: string;
  readonly lobe: number;
  readonly lift: number;
}

function told({ card: [printed, valveLift], assumed, stamp, lobe: read, lift }: Read) {
  const { judgements } = assess(
    buildOf([], {
      card: { assumedRatio: assumed, intake: lobe(printed, { valveLift }), exhaust: lobe(printed) },
      arms: [stamped(stamp)],
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes: [...passesOf('lobe-lift', [read, read, read]), ...passesOf('valve-lift', [lift, lift, lift])],
    }),
  );
  const of = (start: string) => judgements.find(({ id }) => id.startsWith(start))?.sentence ?? '';
  return { card: of('card-ratio:'), lobe: of('card-lobe:') };
}

const LOW: Read = { card: [0.34, 0.51], assumed: 1.5, stamp: '1.6', lobe: 0.33, lift: 0.528 };

describe('what is left of a lift that is off the card’s', () => {
  test('a lobe .010 low under a 1.6: the ratio makes .034 over, the lobe .016 under', () => {
    const { card } = told(LOW);
    expect(card).toMatch(
      /\.018 in over the card’s; its ratio alone makes \.034 in over, and the lobe, \.010 in under the card’s, makes \.016 in under\.$/,
    );
  });

  test('a lobe .008 low under a 1.7, the card for 1.75', () => {
    const { card } = told({ card: [0.345, 0.604], assumed: 1.75, stamp: '1.7', lobe: 0.337, lift: 0.5725 });
    expect(card).toMatch(
      /\.031 in under the card’s; its ratio makes \.017 in of that, and the lobe, \.008 in under the card’s, makes \.014 in under\.$/,
    );
  });

  test('a lobe .006 high', () => {
    const { card } = told({ card: [0.345, 0.604], assumed: 1.75, stamp: '1.7', lobe: 0.351, lift: 0.597 });
    expect(card).toMatch(
      /\.007 in under the card’s; its ratio alone makes \.017 in under, and the lobe, \.006 in over the card’s, makes \.010 in over\.$/,
    );
  });

  test('the lift is the card’s because a low lobe takes off what the ratio adds', () => {
    const { card } = told({ ...LOW, lobe: 0.32, lift: 0.512 });
    expect(card).toMatch(
      /The lift as read is the card’s; its ratio alone makes \.034 in over, and the lobe, \.020 in under the card’s, makes \.032 in under\.$/,
    );
  });

  test('over, with the lobe of the card: ordinary for such an arm', () => {
    expect(told({ ...LOW, lobe: 0.34, lift: 0.56 }).card).toMatch(
      /its ratio makes \.034 in of that, and \.016 in over is what is ordinary for such an arm\.$/,
    );
  });

  test('a little under, with the lobe of the card: no room for flex', () => {
    expect(told({ ...LOW, lobe: 0.34, lift: 0.538 }).card).toMatch(
      /its ratio alone makes \.034 in over, and \.006 in under lies within 2 % of that ratio\.$/,
    );
  });
});

describe('what a lobe off its card makes at the valve', () => {
  test.each([
    ['.330 × 1.6 = .528', LOW],
    ['.351 × 1.7 = .597', { card: [0.345, 0.604], assumed: 1.75, stamp: '1.7', lobe: 0.351, lift: 0.597 }],
    ['.333 × 1.65 = .5495', { card: [0.353, 0.565], assumed: 1.6, stamp: '1.6', lobe: 0.333, lift: 0.5495 }],
  ] as const)('%s shows it', (_, read) => {
    expect(told(read).lobe).not.toMatch(/does not show it/);
  });

  test('an arm of which nobody said what it is: nothing is said against the lobe', () => {
    expect(told({ ...LOW, stamp: '' }).lobe).toMatch(/That takes \.016 in off the valve lift\.$/);
  });
});
