import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import { orNone } from '../../../shared/quantities/field-range.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { lengths } from '../../../shared/schemas/quantity-lists.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { EQUAL, nearestOf } from '../kit/nearest.ts';
import { noGapFound, sameHeat } from '../setting/words.ts';
import { makerFirst } from '../springs/caution.ts';

const input = z.strictObject({
  shimFitted: length('thickness of the shim that is fitted; zero where none is', {
    sign: 'not-negative',
    canBe: orNone(CAN_BE.lashShim),
  }),
  lashFound: length('gap measured with that shim, on the base circle', {
    sign: 'not-negative',
    canBe: CAN_BE.lashFound,
  }),
  lashWanted: length('gap that is wanted', { sign: 'not-negative', canBe: CAN_BE.lash }),
  stock: lengths('thicknesses that are in stock; may be empty', {
    least: 0,
    canBe: CAN_BE.lashShim,
  }).optional(),
});

const output = z.object({
  shim: out('length', 'thickness of the shim that gives the wanted gap'),
  nearest: z
    .object({
      shim: out('length', 'thickness of the nearest shim in stock; of two equally near the thinner'),
      lash: out('length', 'gap that it gives'),
    })
    .meta({ description: 'the nearest in stock that leaves a gap; left out where none does' })
    .optional(),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;

function nearestThatLeavesGap({ stock = [], lashWanted }: Given, shim: number): Result['nearest'] {
  const lashOf = (each: number) => shim + lashWanted - each;
  const fit = stock.filter((each) => lashOf(each) > EQUAL || Math.abs(each - shim) <= EQUAL);
  const nearest = nearestOf(fit, shim);
  // The wanted gap may itself be none; adding zero turns a −0 of it into 0.
  return nearest === undefined ? undefined : { shim: nearest, lash: Math.max(0, lashOf(nearest)) };
}

/**
 * The shim that gives a wanted lash, for adjusters that are shims: over or under a bucket, or on the valve’s tip.
 *
 * Equation: shim = shimFitted + lashFound − lashWanted; lash that a shim s in stock gives = shimFitted + lashFound − s
 *
 * @param shimFitted [m] thickness of the shim that was in when the gap was measured, not negative; zero for none
 * @param lashFound [m] gap measured with it, on the base circle, not negative
 * @param lashWanted [m] gap that is wanted, not negative
 * @param stock [m] thicknesses in stock, above zero; left out or empty, none is named
 * @returns shim [m], nearest (shim [m], lash [m]: of the stock, the nearest of those that leave a gap or meet the wanted
 * one; of two equally near the thinner, because a gap too wide is heard and one too tight keeps the valve from closing)
 * @throws impossible-input when the shim would have no thickness
 *
 * Validity: the shim’s whole thickness stands in the gap: a bucket, or a cap or shim on the stem. Under a finger’s pivot
 * the lever changes it.
 * Source: derived here; the same sum is common practice in workshop manuals, no published source.
 */
function lashShim(given: Given): Result {
  const { shimFitted, lashFound, lashWanted } = given;
  const shim = shimFitted + lashFound - lashWanted;
  if (shim <= EQUAL) {
    impossible(
      ['shimFitted', 'lashFound', 'lashWanted'],
      'the shim would have no thickness: more gap is wanted than taking the shim out gives',
    );
  }
  return { shim, ...defined({ nearest: nearestThatLeavesGap(given, shim) }) };
}

function ofStock({ stock, lashWanted }: Given, { nearest }: Result): string[] {
  if (stock === undefined) return [];
  if (stock.length === 0) return ['Nothing is in stock, so no shim is named.'];
  if (nearest === undefined)
    return ['No shim in stock leaves a gap: each would hold the valve off its seat.'];
  const off = nearest.lash - lashWanted;
  if (Math.abs(off) <= EQUAL) return [];
  return [
    `The nearest in stock gives ${off > 0 ? 'more' : 'less'} gap than wanted: hold it against the range that the maker allows.`,
  ];
}

export const computation = defineComputation({
  name: 'lash-shim',
  title: 'Lash by shim',
  summary: 'The shim that gives a wanted lash, and the nearest one in stock with the lash that it gives.',
  words: ['shim', 'bucket', 'lash cap', 'overhead cam', 'valve clearance', 'thickness', 'tappet shim'],
  input,
  output,
  equation:
    'shim = shim fitted + lash found − lash wanted; a shim s in stock gives shim fitted + lash found − s',
  tex: 's = s_\\mathrm{fitted} + g_\\mathrm{found} - g_\\mathrm{wanted}',
  source: 'derived here; common practice in workshop manuals, no published source',
  validity: 'a shim whose whole thickness stands in the gap: over or under a bucket, or on the valve’s tip',
  assumptions: () => [
    'the whole thickness of the shim stands in the gap, with no lever between',
    'the shim fitted was measured itself: its marking and its wear are not the same',
  ],
  cautions: (given, result) => [
    sameHeat,
    ...(given.lashFound === 0 ? [noGapFound] : []),
    ...ofStock(given, result),
    'Measure the new shim before it goes in, and the gap again once it is in and the engine was turned two turns.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      shimFitted: { value: 2.6, unit: 'mm' },
      lashFound: { value: 0.3, unit: 'mm' },
      lashWanted: { value: 0.2, unit: 'mm' },
      stock: { values: [2.6, 2.65, 2.72, 2.8], unit: 'mm' },
    },
    result: {
      shim: { value: 2.7 / 25.4, unit: 'in' },
      nearest: { shim: { value: 2.72 / 25.4, unit: 'in' }, lash: { value: 0.18 / 25.4, unit: 'in' } },
    },
  },
  headline: () => ['shim'],
  compute: lashShim,
});
