import { z } from 'zod';
import { listOf } from '../../../shared/schemas/fields.ts';
import { bare } from '../../../shared/schemas/number-fields.ts';
import { out, outList, outPlace } from '../../../shared/schemas/outputs.ts';
import { length, rate } from '../../../shared/schemas/quantity-fields.ts';
import { evenIfFaulty } from '../../../shared/schemas/two-forms.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { defaultLimit } from '../kit/limits.ts';
import { judged, verdictInputs, verdictOutputs } from '../kit/verdict.ts';
import { firstSolid, loadAt, refuseImpossibleSprings, refuseLiftOverHeights } from '../springs/nest.ts';
import { nestExample } from '../springs/nest-example.ts';
import { nestHeightJsonSchema, nestHeightWhereNeeded } from '../springs/nest-height.ts';
import { loadInterval } from '../springs/nest-interval.ts';
import { nestAssumptions, nestCautions } from '../springs/nest-words.ts';

const input = z
  .strictObject({
    springs: listOf(
      z.strictObject({
        rate: rate('load this spring gains for each unit it is pressed'),
        freeLength: length('length of this spring when nothing presses it'),
        solidHeight: length('height of this spring with all its coils touching'),
        installedHeight: length(
          'height of this spring with the valve on its seat, where a step sets it apart; left out, that of the nest',
        ).optional(),
      }),
      'the springs of the nest, outer first or as you like',
    ),
    installedHeight: length(
      'height of the nest with the valve on its seat; may be left out where each spring has its own',
    ).optional(),
    netLift: length('lift of the valve off its seat', { below: 'impossible-input' }),
    loadTolerance: bare('how far off each load can be, half-width, as a part of it; left out, no interval', {
      least: 0,
      below: 1,
      beyond: 1000,
    }).optional(),
    ...verdictInputs,
  })
  .superRefine(nestHeightWhereNeeded, evenIfFaulty)
  .meta(nestHeightJsonSchema);

const loadEnds = (description: string) =>
  z.tuple([out('load', 'low end'), out('load', 'high end')]).meta({ description });

const output = z.object({
  seatLoad: out('load', 'load of all the springs with the valve on its seat'),
  openLoad: out('load', 'load of all the springs at full lift'),
  loads: outList(
    z.object({
      seatLoad: out('load', 'load of this spring with the valve on its seat'),
      openLoad: out('load', 'load of this spring at full lift'),
    }),
    'each spring, in the order given',
  ),
  interval95: z
    .object({
      seatLoad: loadEnds('95 % interval of the load of all the springs with the valve on its seat'),
      openLoad: loadEnds('95 % interval of the load of all the springs at full lift'),
    })
    .meta({ description: 'only with a load tolerance' })
    .optional(),
  ...verdictOutputs,
  limiting: outPlace('which spring goes solid first'),
});

type Given = z.output<typeof input>;
type Spring = Given['springs'][number];

const total = (loads: readonly number[]) => loads.reduce((sum, each) => sum + each, 0);

/** The height of a spring: its own, or that of the nest, which the input has wherever one has none of its own. */
function heightOf(spring: Spring, nest: number | undefined): number {
  const height = spring.installedHeight ?? nest;
  if (height === undefined) throw new RangeError('a spring without a height');
  return height;
}

/**
 * Seat and open load of springs that stand one inside the other, and the room before the first goes solid.
 *
 * Equation: F = Σ kᵢ·max(0, freeLengthᵢ − heightᵢ); margin = min(installedHeightᵢ − netLift − solidHeightᵢ);
 * U = 1.96·√(Σ(loadTolerance·Fᵢ/√3)²), at most loadTolerance·F
 *
 * @param springs [N/m, m] each with `rate` (above zero), `freeLength` (above zero), `solidHeight` (above zero,
 * to the free length and the installed height) and, where a step sets it apart, `installedHeight`; 1 to 2000
 * @param installedHeight [m] height of the nest with the valve on its seat, above zero; may be left out where each
 * spring has its own
 * @param netLift [m] lift of the valve off its seat, above zero
 * @param loadTolerance [1] half-width of each spring's load as a part of it, 0 to below 1; left out, no interval
 * @param limit [m] least room before coil bind; left out, the default of the limits table
 * @param uncertainty [m] half-width of the margin's 95 % interval; left out, zero
 * @returns seatLoad [N], openLoad [N], loads ([N], each spring), interval95 ([N], of seatLoad and openLoad), margin [m]
 * (negative: coils touch first), limit [m], verdict [1], limiting [1] (index of the spring that goes solid first)
 * @throws impossible-input when a solid height is above its installed height or above its own free length
 * @throws impossible-input when the lift takes up a whole installed height, or is at or below zero
 *
 * Validity: linear springs under one retainer, which presses each by the lift; no friction between coils. Each load
 * anywhere within its tolerance alike, the springs independently of one another.
 * Source: springs in parallel, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1; nested springs
 * of unequal length as in V. B. Bhandari, Design of Machine Elements, example 10.19; JCGM 100:2008, 4.3.7 and 5.1.2.
 */
function springNest(given: Given): z.output<typeof output> {
  const { springs, netLift, loadTolerance } = given;
  const installed = (spring: Spring) => heightOf(spring, given.installedHeight);
  const open = (spring: Spring) => installed(spring) - netLift;
  everyFault(
    () => refuseImpossibleSprings(springs, installed),
    () => refuseLiftOverHeights(springs, installed, netLift),
  );
  const loads = springs.map((spring) => ({
    seatLoad: loadAt(spring, installed(spring)),
    openLoad: loadAt(spring, open(spring)),
  }));
  const [seatLoads, openLoads] = [loads.map((each) => each.seatLoad), loads.map((each) => each.openLoad)];
  const { index, margin } = firstSolid(springs, open);
  return {
    seatLoad: total(seatLoads),
    openLoad: total(openLoads),
    loads,
    ...(loadTolerance === undefined
      ? {}
      : {
          interval95: {
            seatLoad: loadInterval(seatLoads, loadTolerance),
            openLoad: loadInterval(openLoads, loadTolerance),
          },
        }),
    ...judged(margin, given, defaultLimit('coil-bind')),
    limiting: index,
  };
}

export const computation = defineComputation({
  name: 'spring-nest',
  title: 'Nested springs',
  summary: 'Seat and open load of a spring nest, and which spring goes solid first.',
  words: ['dual spring', 'triple spring', 'inner spring', 'damper', 'coil bind', 'open load', 'seat load'],
  input,
  output,
  equation:
    'load = sum of rate × (free length − height); margin = least of installed height − net lift − solid height',
  tex: 'F(H) = \\sum_i k_i \\max(0, L_i - H), \\qquad m = \\min_i (H_i - h - H_{s,i})',
  source:
    'springs in parallel, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1; V. B. Bhandari, Design of Machine Elements, example 10.19; JCGM 100:2008, 4.3.7 and 5.1.2',
  validity:
    'linear springs under one retainer, without friction; a step only where a spring has a height of its own',
  assumptions: nestAssumptions,
  cautions: (_given, result) => nestCautions(result),
  example: nestExample,
  headline: () => ['margin'],
  compute: springNest,
});
