import { inSpoken } from '../../../shared/quantities/authored.ts';
import { within } from './compare.ts';
import { idsOf, lobeInUse, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { nominalText, ratioText } from './words.ts';

/** Common practice, no published source. A running ratio is set against no mark, so neither is its size. */
const takes = () => inSpoken('A running spring takes .005 to .040 in off the lift.');

/** A ratio on the running spring, or on none that was stated, next to what the rockers are sold as. */
function askAgainstStamp(input: QuestionInput): Question[] {
  const lift = valveLift(input);
  const lobe = lobeInUse(input);
  const nominal = input.nominalRatio;
  if (lift === undefined || lobe === undefined || nominal === undefined || input.spring === 'light')
    return [];
  // Beside a light reading a running one is there for the deflection.
  if (input.spring === 'running' && input.lightRatio !== undefined) return [];
  const restsOn = idsOf(input.valvePasses);
  if (input.spring === 'not-said') {
    return [
      {
        code: 'spring-not-said',
        weight: 'weak',
        ask: `Which spring is on the valve? Only a light-spring ratio is set against ${nominalText(nominal)}.`,
        size: takes(),
        test: 'Ask, or have a look taken at the spring: light checking spring or running spring.',
        testAtBench: 'Look at the spring: light checking spring or running spring.',
        restsOn,
      },
    ];
  }
  return [
    {
      code: 'spring-mixed',
      weight: 'weak',
      ask: `Is this being set against the ${nominalText(nominal)}? It was read on the running spring.`,
      size: takes(),
      test: 'Fit a light spring, same lifter, same lash, same zero, and read again.',
      restsOn,
    },
  ];
}

/** The running spring can only take lift away. */
function askSwapped(input: QuestionInput, t: Tolerances): Question[] {
  const { lightRatio, runningRatio } = input;
  if (lightRatio === undefined || runningRatio === undefined) return [];
  const over = runningRatio - lightRatio;
  if (over <= 0 || within(over, t.springsSwappedDoubtful)) return [];
  return [
    {
      code: 'springs-swapped',
      weight: within(over, t.springsSwapped) ? 'weak' : 'strong',
      ask: 'Could the two springs be noted the wrong way round?',
      size: `Running ${ratioText(runningRatio)} is over light ${ratioText(lightRatio)}.`,
      test: 'Say which spring was on the valve for each set of readings.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

/** Flex is light less running at the same lash only. Where both are said it is asked once, of the running one. */
function askLash(input: QuestionInput): Question[] {
  const { lightLash, runningLash, spring } = input;
  if (lightLash === undefined || runningLash === undefined || lightLash === runningLash) return [];
  const said = lightLash !== 'not-said' && runningLash !== 'not-said';
  if (said && spring === 'light') return [];
  const words = { zero: 'at zero lash', set: 'with the lash set', 'not-said': 'at a lash not said' };
  return [
    {
      code: 'springs-at-different-lash',
      weight: said ? 'strong' : 'weak',
      ask: 'Was the lash the same on both springs?',
      size: `Light was read ${words[lightLash]}, running ${words[runningLash]}.`,
      test: 'Read both again at the same lash, same lifter, same zero.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}

/** Row 14: two springs, two ratios, and one taken for the other. */
export function springMixed(input: QuestionInput, tolerances: Tolerances): Question[] {
  return [...askSwapped(input, tolerances), ...askLash(input), ...askAgainstStamp(input)];
}
