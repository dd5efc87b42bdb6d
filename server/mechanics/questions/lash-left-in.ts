import { nearest, within } from './compare.ts';
import { grossAlsoHeld, grossExpected, idsOf, lashesKnown, lobeInUse, valveLift } from './lifts.ts';
import { stationsAreFull } from './short-at-top.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { changeText, inch } from './words.ts';

const TEST =
  'Ask whether the lash was out when these were read; if nobody is sure, take it up to zero and read again.';

/** On a running spring flex is missing too, so the lash alone never fits tightly. */
function weightOf(
  input: QuestionInput,
  t: Tolerances,
  off: number,
  lift: number,
): Question['weight'] | undefined {
  // Over a lobe that was read nothing is missing: then the card's lobe is the odd one, not the lift.
  const isAt = (expected: number) => within(expected - lift, t.lashFitsStrongly);
  const whole = grossExpected(input).some(isAt);
  const tightly = within(off, t.lashFitsStrongly) && !whole;
  if (input.lifter === 'hydraulic') return undefined;
  // Said to be out, and whole with the other ratio that the arm is held to be: nothing is missing.
  if (input.lash === 'zero' && grossAlsoHeld(input).some(isAt)) return undefined;
  // Said to be out, it is asked once more where the lift is short by just that: so is a lift that it was left in.
  if (input.spring === 'light' && tightly) return 'strong';
  if (input.lash === 'zero') return undefined;
  return within(off, input.spring === 'light' ? t.lashFits : t.lashFitsStrongly) ? 'weak' : undefined;
}

/** Left in, and nobody has said how much: the card's figure is what it should have been, not what it was. */
function askSizeNotSaid(input: QuestionInput): Question[] {
  if (input.valvePasses.length === 0) return [];
  return [
    {
      code: 'lash-setting-not-said',
      weight: 'weak',
      ask: 'How much lash was left in? It is missing from the lift.',
      size: 'The lift would be longer by the lash.',
      test: 'Ask how much was in it when these were read. A feeler tells only if nobody has turned the adjuster since.',
      testAtBench:
        'Say how much was in it when these were read. A feeler tells only if nobody has turned the adjuster since.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

/** The lash on record that fits best: what it was set to, the card's, or a line of the log. */
function fitting(input: QuestionInput, lift: number): { lash: number; off: number } | undefined {
  const fits = lashesKnown(input).flatMap((lash) => {
    const expected = nearest(lift + lash, grossExpected(input));
    return expected === undefined ? [] : [{ lash, off: expected - lift - lash }];
  });
  return fits.toSorted((a, b) => Math.abs(a.off) - Math.abs(b.off))[0];
}

/** Row 10: the lift is short by the lash. */
export function lashLeftIn(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lift = valveLift(input);
  if (input.lash === 'set') return input.lashSetting === undefined ? askSizeNotSaid(input) : [];
  const best = lift === undefined ? undefined : fitting(input, lift);
  if (lift === undefined || best === undefined || stationsAreFull(input)) return [];
  const weight = weightOf(input, tolerances, best.off, lift);
  if (weight === undefined) return [];
  return [
    {
      code: 'lash-left-in',
      weight,
      ask: `Could the lash of ${inch(best.lash)} be left in the lift?`,
      knownBy: 'Could the lash of be left in the lift?',
      size: changeText(lift, lift + best.lash, lobeInUse(input)),
      test: TEST,
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
