import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import type { FieldRange } from '../../../shared/quantities/field-range.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { ratio, threadTurns } from '../../../shared/schemas/number-fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { lengths } from '../../../shared/schemas/quantity-lists.ts';
import {
  allOrNone,
  evenIfFaulty,
  notBeside,
  oneOfTwoForms,
  twoFormsJsonSchema,
} from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { EQUAL, nearestOf } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { IN } from '../kit/si.ts';
import { nearestCautions } from '../setting/pushrod-cautions.ts';
import { EFFECTIVE_SHORTER } from '../setting/setting-table.ts';
import { makerFirst } from '../springs/caution.ts';
import { threadField } from '../threads/designation-field.ts';
import { pitchField } from '../threads/pitch-field.ts';

/** A checking pushrod comes apart before that: common practice, no published source. */
const CHECKER_TURNS = 40;

const allowance = (description: string, canBe: FieldRange) =>
  length(description, { sign: 'not-negative', canBe }).optional();

const input = z
  .strictObject({
    checkerAtZero: length('the checking pushrod’s length at its zero, its halves together', {
      canBe: CAN_BE.pushrod,
    }),
    thread: threadField('thread of the checking pushrod').optional(),
    pitch: pitchField('how much longer a turn makes it, or a text such as 20 tpi').optional(),
    turns: threadTurns('turns from its zero, out positive', {}, CHECKER_TURNS),
    add: allowance('preload to add, at the pushrod: hydraulic lifters', CAN_BE.preload),
    less: allowance('lash to take off, at the pushrod: solid lifters', CAN_BE.lash),
    lash: allowance('lash to take off, at the valve tip, instead of less; with ratio', CAN_BE.lash),
    ratio: ratio('rocker ratio, valve over lobe; with lash').optional(),
    convention: choice(
      ['overall', 'effective'],
      'how the answer and the stock are told, the checker being read end to end: overall as read, effective at a .140 in gauge; left out, all are told the same way',
    ).optional(),
    stock: lengths('lengths that are in stock; may be empty', { least: 0, canBe: CAN_BE.pushrod }).optional(),
  })
  .superRefine(oneOfTwoForms(['thread'], ['pitch']), evenIfFaulty)
  .superRefine(allOrNone('lash', 'ratio'), evenIfFaulty)
  .superRefine(notBeside('lash', 'less'), evenIfFaulty)
  .meta(twoFormsJsonSchema(['thread'], ['pitch']));

const output = z.object({
  length: out('length', 'length of the pushrod that is wanted'),
  nearest: z
    .object({
      length: out('length', 'the nearest in stock; of two equally near the shorter'),
      difference: out('length', 'how much longer it is than wanted; negative when shorter'),
    })
    .meta({ description: 'the nearest in stock; left out where nothing is' })
    .optional(),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;

/** No machine has a pushrod beyond this. */
const LONGEST = 100 * IN;

const perTurn = ({ thread, pitch }: Given): number => pitch ?? thread?.pitch ?? 0;

/** What is taken off at the pushrod: as told there, or the lash at the valve tip through the rocker. */
const takenOff = ({ less, lash, ratio: rockerRatio }: Given): number =>
  less ?? (lash === undefined || rockerRatio === undefined ? 0 : lash / rockerRatio);

/**
 * The pushrod to order, from a checking pushrod turned out to fit, and the nearest one in stock.
 *
 * Equation: length = checkerAtZero + turns·P + add − less, less .017 in where it is told as effective;
 * less = lash/ratio where the lash is told at the valve; difference = length in stock − length
 *
 * @param checkerAtZero [m] length of the checking pushrod at its zero, above zero
 * @param thread [1] designation of its thread; the pitch P [m] is what a turn makes it longer; or `pitch`
 * @param pitch [m] the same, above zero; instead of `thread`
 * @param turns [1] from its zero, out positive; negative where it was turned in past its zero
 * @param add [m] preload to add, at the pushrod, not negative; left out, zero
 * @param less [m] lash to take off, at the pushrod, not negative (at the valve tip it is the ratio times that); left out,
 * zero
 * @param lash [m] the same lash at the valve tip, not negative; with `ratio`, instead of `less`
 * @param ratio [1] rocker ratio, valve over lobe, above zero; with `lash`
 * @param convention [1] `overall`: end to end over the oil holes, as a caliper reads; `effective`: where a gauge with a
 * .140 in hole sits on the ends; left out, checker, answer and stock are told in one way and nothing is converted
 * @param stock [m] lengths in stock, told as the answer is, above zero; left out or empty, none is named
 * @returns length [m], nearest (length [m], difference [m]: stock − wanted; of two equally near the shorter, because
 * what is short shows as play or is taken up by the adjuster, and what is long can hold the valve off its seat)
 * @throws required when neither thread nor pitch comes, or lash or ratio without the other
 * @throws not-allowed when both thread and pitch come, or both lash and less
 * @throws impossible-input when nothing, or more than 100 in, would be left as the length
 *
 * Validity: the checker was set with a solid or locked lifter, light spring and the tip’s mark in its place; the .017 in
 * is of a 5/16 in ball with .100 in oil holes.
 * Source: sum derived here; conventions by a cam maker’s questions and answers; travel per turn by ASME B1.1, ISO 965-2.
 */
function pushrodLength(given: Given): Result {
  const { checkerAtZero, turns: turned, add = 0, convention, stock = [] } = given;
  const told = convention === 'effective' ? EFFECTIVE_SHORTER.by : 0;
  const wanted = checkerAtZero + turned * perTurn(given) + add - takenOff(given) - told;
  if (wanted <= EQUAL || wanted > LONGEST * (1 + 1e-12)) {
    const also = (['add', 'less', 'lash'] as const).filter((name) => given[name] !== undefined);
    impossible(
      ['checkerAtZero', 'turns', ...also],
      wanted > 0 ? 'together these make a pushrod beyond any machine part' : 'together these leave no length',
    );
  }
  const nearest = nearestOf(stock, wanted);
  return {
    length: wanted,
    ...(nearest === undefined ? {} : { nearest: { length: nearest, difference: nearest - wanted } }),
  };
}

const apart = saidLength(EFFECTIVE_SHORTER.by);

function ofConvention({ convention }: Given): string {
  if (convention === undefined)
    return `Overall and effective lengths are about ${apart} apart: ask which one the catalogue means, and which one the checker is marked in.`;
  return `A length stamped on a checker is commonly the effective one already: then leave the convention out, or about ${apart} is counted twice.`;
}

export const computation = defineComputation({
  name: 'pushrod-length',
  title: 'Pushrod length',
  summary: 'The pushrod to order, from a checking pushrod turned out to fit, and the nearest one in stock.',
  words: [
    'checking pushrod',
    'length checker',
    'adjustable pushrod',
    'gauge length',
    'effective length',
    'overall length',
    'custom length',
  ],
  input,
  output,
  equation:
    'length = checker at zero + turns × pitch + preload to add − lash to take off; effective = overall − .017 in',
  tex: 'L = L_0 + n P + s - g, \\qquad L_\\mathrm{effective} = L_\\mathrm{overall} - .017\\,\\text{in}',
  source: `sum derived here; travel per turn by ASME B1.1 and ISO 965-2; conventions: ${EFFECTIVE_SHORTER.source}`,
  validity:
    'checker set on a solid or locked lifter and a light spring, tip mark in its place; .017 in for a 5/16 in ball with .100 in oil holes',
  assumptions: ({ convention, lash }) => [
    'the lifter under the checker was solid or locked, the spring light, and the mark on the stem’s end in its place',
    lash === undefined
      ? 'preload and lash are told at the pushrod; a lash at the valve tip is the ratio times as much'
      : 'preload is told at the pushrod, lash at the valve tip: the pushrod gives up the lash over the ratio',
    ...(convention === undefined
      ? ['checker, answer and stock are told in one way: nothing is converted']
      : [`the checker was read end to end; answer and stock are ${convention} lengths`]),
    ...(convention === 'effective'
      ? [`an effective length is ${apart} under the overall one: ${EFFECTIVE_SHORTER.source}`]
      : []),
  ],
  cautions: (given, { nearest }) => [
    ofConvention(given),
    ...(given.turns < 0
      ? ['Turned in past its zero: most checkers are closed there. Measure it whole before ordering.']
      : []),
    ...((given.add ?? 0) > 0 && takenOff(given) > 0
      ? ['Preload is for a hydraulic lifter, lash for a solid one: are both meant?']
      : []),
    ...(given.stock?.length === 0 ? ['Nothing is in stock, so no length is named.'] : []),
    ...(nearest === undefined
      ? []
      : nearestCautions({
          pitch: perTurn(given),
          add: given.add ?? 0,
          less: takenOff(given),
          difference: nearest.difference,
        })),
    'Measure the checker itself as it came out, fit the new length, and ink the tip again before the set is ordered.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      checkerAtZero: { value: 7.8, unit: 'in' },
      pitch: { value: 0.05, unit: 'in' },
      turns: 1,
      add: { value: 0.03, unit: 'in' },
      stock: { values: [7.85, 7.875, 7.9], unit: 'in' },
    },
    result: {
      length: { value: 7.88, unit: 'in' },
      nearest: { length: { value: 7.875, unit: 'in' }, difference: { value: -0.005, unit: 'in' } },
    },
  },
  headline: () => ['length'],
  compute: pushrodLength,
});
