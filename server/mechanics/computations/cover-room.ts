import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { outText, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { defaultLimit } from '../kit/limits.ts';
import { EQUAL } from '../kit/nearest.ts';

const input = z.strictObject({
  coverBolting: choice(['through-centre', 'perimeter'], 'how the valve cover is bolted down'),
  assemblyWidth: length('width across the trunnion, ends and rings included'),
  limits: z
    .strictObject({
      narrowUpTo: length('assemblies up to this width count as narrow'),
      wideFrom: length('assemblies from this width on count as wide'),
    })
    .meta({ description: 'what counts as narrow and wide; left out, the defaults of the limits table' })
    .optional(),
});

const output = z.object({
  verdict: outWord(['clear', 'close', 'short'], 'sideways room under the cover'),
  reason: outText('why'),
  settledBy: outText('what settles it'),
});

/** What no width tells. */
export const COVER_HEIGHT =
  'height, with nut, girdle and baffles, is still to check: clay on the highest points, gasket on';
const settled = (by: string) => `${by}; ${COVER_HEIGHT}`;
const BY_WIDTH = settled('the width across the trunnion');

/**
 * Whether a rocker assembly has room sideways under a valve cover.
 *
 * Equation: perimeter: clear; through-centre: clear when width ≤ narrowUpTo, short when width ≥ wideFrom, else close
 *
 * @param coverBolting [1] `through-centre` (bolts run down between the rockers) or `perimeter` (round the edge)
 * @param assemblyWidth [m] across the trunnion, ends and rings included, above zero
 * @param limits [m] `narrowUpTo` and `wideFrom`, the first below the second; left out, the defaults of the table
 * @returns verdict [1] (`clear`, `close`, `short`), reason [1], settledBy [1]
 * @throws impossible-input when narrowUpTo is not below wideFrom
 *
 * Validity: sideways room alone; height is always still to check.
 * Source: common practice, no published source.
 */
function coverRoom({ coverBolting, assemblyWidth, limits }: z.output<typeof input>): z.output<typeof output> {
  const narrowUpTo = limits?.narrowUpTo ?? defaultLimit('narrow-assembly-up-to');
  const wideFrom = limits?.wideFrom ?? defaultLimit('wide-assembly-from');
  if (narrowUpTo >= wideFrom) {
    impossible(['limits/narrowUpTo', 'limits/wideFrom'], 'narrow must end below where wide begins');
  }
  if (coverBolting === 'perimeter') {
    return {
      verdict: 'clear',
      reason: 'a cover bolted round its edge clears narrow and wide assemblies sideways',
      settledBy: settled('the way the cover is bolted down'),
    };
  }
  if (assemblyWidth <= narrowUpTo + EQUAL) {
    return {
      verdict: 'clear',
      reason: 'a cover bolted through its centre is made for narrow assemblies like this one',
      settledBy: BY_WIDTH,
    };
  }
  if (assemblyWidth >= wideFrom - EQUAL) {
    return {
      verdict: 'short',
      reason: 'a cover bolted through its centre is not expected to clear a wide assembly',
      settledBy: BY_WIDTH,
    };
  }
  return {
    verdict: 'close',
    reason: 'between narrow and wide the width can’t tell under a cover bolted through its centre',
    settledBy: settled('measuring the cover across the rockers, inside'),
  };
}

export const computation = defineComputation({
  name: 'cover-room',
  title: 'Room under the valve cover',
  summary: 'Whether a rocker assembly clears the valve cover sideways.',
  words: [
    'valve cover',
    'rocker cover',
    'centre bolt',
    'center bolt',
    'perimeter bolt',
    'trunnion width',
    'clearance',
  ],
  input,
  output,
  equation:
    'perimeter: clear; through the centre: clear up to the narrow limit, short from the wide limit, close between',
  tex: 'w \\le w_\\mathrm{narrow}:\\ \\text{clear}, \\qquad w \\ge w_\\mathrm{wide}:\\ \\text{short}, \\qquad \\text{else close}',
  source: 'common practice, no published source',
  validity: 'sideways room alone; height is always still to check',
  assumptions: (given) => [
    'sideways room alone',
    'the width is taken across the trunnion, ends and retaining rings included, not across the body',
    ...(given.limits === undefined
      ? ['the default limits of narrow and wide assemblies, common practice, no published source']
      : []),
  ],
  cautions: () => [
    'Height is always still to check: nut, girdle, baffles and rails, with clay and the gasket on. Turn the engine by hand.',
  ],
  example: {
    inputs: { coverBolting: 'through-centre', assemblyWidth: { value: 1.6, unit: 'in' } },
    result: {
      verdict: 'short',
      reason: 'a cover bolted through its centre is not expected to clear a wide assembly',
      settledBy: BY_WIDTH,
    },
  },
  headline: () => ['reason'],
  compute: coverRoom,
});
