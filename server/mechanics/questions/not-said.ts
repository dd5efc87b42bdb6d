import { inSpoken } from '../../../shared/quantities/authored.ts';
import { lashLeftIn } from './lash-left-in.ts';
import { idsOf } from './lifts.ts';
import { leanThatFits } from './plunger-tilted.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';

/** The lift is short by a lash on record: that is asked, with the same answers, in place of how the lash was. */
const asksForLash = (input: QuestionInput, tolerances: Tolerances): boolean =>
  lashLeftIn(input, tolerances).some(({ weight }) => weight === 'strong');

/** What was not said of the set-up. Where a nominal is at hand, `spring-mixed` asks for the spring. */
export function notSaid(input: QuestionInput, tolerances: Tolerances): Question[] {
  if (input.valvePasses.length === 0) return [];
  const restsOn = idsOf(input.valvePasses);
  const question = (
    code: Question['code'],
    ask: string,
    size: string,
    test: string,
    testAtBench?: string,
    weight: Question['weight'] = 'weak',
  ): Question => ({
    code,
    weight,
    ask,
    size,
    test,
    ...(testAtBench === undefined ? {} : { testAtBench }),
    restsOn,
  });
  const lean = leanThatFits(input, tolerances);
  return [
    ...(input.spring === 'not-said' && input.nominalRatio === undefined
      ? [
          question(
            'spring-not-said',
            'Which spring is on the valve, light or running?',
            inSpoken('A running spring takes .005 to .040 in off the lift.'),
            'Ask, or have a look taken at the spring.',
            'Look at the spring, and say which it is.',
          ),
        ]
      : []),
    ...(input.lifter === 'not-said'
      ? [
          question(
            'lifter-not-said',
            'Which lifter is under the pushrod?',
            'What a plunger loses, times the ratio, is missing at the valve.',
            'Ask: solid, hydraulic, or hydraulic locked solid.',
            'Say which: solid, hydraulic, or hydraulic locked solid.',
          ),
        ]
      : []),
    ...(input.lash === 'not-said' && !asksForLash(input, tolerances)
      ? [
          question(
            'lash-not-said',
            'Was the lash taken up for the reading?',
            'All the lash left in is missing from the lift.',
            'Feel for play at the rocker on the base circle.',
          ),
        ]
      : []),
    ...(input.alignment === 'not-said'
      ? [
          question(
            'alignment-not-said',
            'Does the plunger stand parallel to the stem, seen from the front and the side?',
            lean ?? 'Ten deg of lean is 1.5 % of the lift, fifteen 3.5 %.',
            'Ask, or have a look taken along the stem from both sides.',
            'Look along the stem from both sides.',
            lean === undefined ? 'weak' : 'strong',
          ),
        ]
      : []),
    ...(input.restsOn === 'not-said'
      ? [
          question(
            'rests-on-not-said',
            'What does the tip of the indicator rest on at the valve?',
            'On a flat face a leaning plunger reads long, held in one spot it reads short.',
            'Ask, or have a look taken.',
            'Look at the tip, and say what it rests on.',
          ),
        ]
      : []),
  ];
}
