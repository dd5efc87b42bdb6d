import { between } from './compare.ts';
import { idsOf, readLobe, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

/** The lobe that the caliper should have found: the card's, or else the valve lift over the nominal. */
function trueLobe(input: QuestionInput): number | undefined {
  if (input.cardLobeLift !== undefined) return input.cardLobeLift;
  const lift = valveLift(input);
  return lift === undefined || input.nominalRatio === undefined ? undefined : lift / input.nominalRatio;
}

/** Row 13: heel to nose less the width across reads low, the sides being on the ramp already. */
export function caliperOnLobe(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lobe = readLobe(input);
  const expected = trueLobe(input);
  if (input.lobeSource !== 'caliper' || lobe === undefined || expected === undefined) return [];
  const low = 1 - lobe / expected;
  if (!between(low, tolerances.caliperFrom, tolerances.caliperTo)) return [];
  return [
    {
      code: 'caliper-on-lobe',
      weight: input.cardLobeLift === undefined ? 'weak' : 'strong',
      ask: 'Could the caliper have sat on the ramp of the lobe?',
      size: `${inch(lobe)} is ${(low * 100).toFixed(1)} % under ${inch(expected)}.`,
      test: 'Read the lobe at the lifter, three passes.',
      restsOn: idsOf(input.lobePasses),
    },
  ];
}
