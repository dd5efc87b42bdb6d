import { nearest, within } from './compare.ts';
import { expectedLifts, idsOf, isOrdinary, ratioExpected, readLobe, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch, TOUCH_ALONE, TOUCH_VALVE } from './words.ts';

const touched = ({ lobesBySiblings }: QuestionInput): string =>
  lobesBySiblings === true ? TOUCH_ALONE : TOUCH_VALVE;

/** The last digit that a dial is read to [in]. */
const LAST_DIGIT = 0.0005;

/** Lobe and lift are both those of the other valve to the last digit: by the one alone it might be chance. */
function isOtherThroughout(lobe: number, other: number, input: QuestionInput): boolean {
  const lift = valveLift(input);
  const ratio = ratioExpected(input);
  return (
    lift !== undefined &&
    ratio !== undefined &&
    within(lobe - other, LAST_DIGIT) &&
    within(lift - other * ratio, 2 * LAST_DIGIT)
  );
}

function askLobe(lobe: number, own: number, other: number, input: QuestionInput, t: Tolerances): Question[] {
  const isOwn = within(lobe - own, t.swapOther);
  if (isOwn || !within(lobe - other, t.swapOther)) return [];
  return [
    {
      code: 'valve-swapped',
      weight: within(lobe - own, t.swapOwn) && !isOtherThroughout(lobe, other, input) ? 'weak' : 'strong',
      ask: 'Could this be the other valve of the cylinder?',
      size: input.lobesBySiblings
        ? `The lobe reads ${inch(lobe)}; the lobes of its side come to ${inch(own)}, those of the other to ${inch(other)}.`
        : `The lobe reads ${inch(lobe)}; the card has ${inch(own)} here and ${inch(other)} on the other.`,
      test: touched(input),
      restsOn: idsOf(input.lobePasses),
    },
  ];
}

/** Without a lobe of its own, the valve lift can only hint. */
function askValve(other: number, input: QuestionInput, t: Tolerances): Question[] {
  const lift = valveLift(input);
  const ratio = ratioExpected(input);
  if (lift === undefined || ratio === undefined || isOrdinary(input, t, lift)) return [];
  if (!within(lift - other * ratio, t.liftFits)) return [];
  const own = nearest(lift, expectedLifts(input));
  if (own === undefined) return [];
  return [
    {
      code: 'valve-swapped',
      weight: 'weak',
      ask: 'Could this be the other valve of the cylinder?',
      size: `${inch(lift)} is near the ${inch(other * ratio)} of the other lobe; this one makes ${inch(own)}.`,
      test: touched(input),
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

/** Row 2: intake taken for exhaust. Lobes alike cannot tell, so then nothing is asked. */
export function valveSwapped(input: QuestionInput, tolerances: Tolerances): Question[] {
  const own = input.cardLobeLift;
  const other = input.otherCardLobeLift;
  if (own === undefined || other === undefined || within(own - other, tolerances.swapOther)) return [];
  const lobe = input.lobeSource === 'caliper' ? undefined : readLobe(input);
  const byLobe = lobe === undefined ? [] : askLobe(lobe, own, other, input, tolerances);
  return byLobe.length > 0 ? byLobe : askValve(other, input, tolerances);
}
