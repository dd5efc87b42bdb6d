import { nearest, within } from './compare.ts';
import { grossExpected, idsOf, lashKnown, lobeInUse, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { changeText, inch } from './words.ts';

const TEST = 'Take the lash up to zero and read again.';

/** On a running spring flex is missing too, so the lash alone never fits tightly. */
function weightOf(input: QuestionInput, t: Tolerances, off: number): Question['weight'] | undefined {
  const tightly = within(off, t.lashFitsStrongly);
  if (input.lifter === 'hydraulic') return undefined;
  if (input.lash === 'zero') return tightly && input.spring === 'light' ? 'weak' : undefined;
  if (input.spring === 'light' && tightly) return 'strong';
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

/** Row 10: the lift is short by the lash. */
export function lashLeftIn(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lash = lashKnown(input);
  const lift = valveLift(input);
  if (input.lash === 'set') return input.lashSetting === undefined ? askSizeNotSaid(input) : [];
  if (lash === undefined || lash === 0 || lift === undefined) return [];
  const expected = nearest(lift + lash, grossExpected(input));
  if (expected === undefined) return [];
  const off = expected - lift - lash;
  const weight = weightOf(input, tolerances, off);
  if (weight === undefined) return [];
  return [
    {
      code: 'lash-left-in',
      weight,
      ask: `Could the lash of ${inch(lash)} be left in the lift?`,
      size: changeText(lift, lift + lash, lobeInUse(input)),
      test: TEST,
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
