import { askAbout } from './ask-about.ts';
import type { Belief } from './belief.ts';
import { type Case, isHydraulic } from './case.ts';
import { isFelt, isRuledOut } from './felt.ts';
import { gatherMistakes } from './single-mistakes.ts';
import { sizesOf } from './sizes.ts';
import type { Question } from './types.ts';

/** Mistakes likely enough to be asked about, likeliest first; near-equal ones are all asked. */
function mistakeQuestions(given: Case, belief: Belief, weights: Float64Array): Question[] {
  return gatherMistakes(belief, weights)
    .filter(({ probability }) => probability >= given.assumed.askFrom)
    .filter(({ cause }) => isFelt(given, cause) && !isRuledOut(given, cause))
    .map(({ cause, entry, probability, representative }) => {
      const sizes = sizesOf(given, belief, representative);
      return {
        cause,
        ...askAbout(cause, sizes, entry),
        probability,
        ...(entry === undefined ? {} : { entry }),
        ...(cause === 'slip' ? { becomes: entry?.of === 'card' ? sizes.card : sizes.unslipped } : {}),
      };
    });
}

/** What was not said of the valve readings. */
function stateQuestions(given: Case): Question[] {
  const valves = given.input.readings.filter((reading) => reading.of === 'valve-lift');
  const ask = (text: string, test: string): Question => ({
    cause: 'state-not-said',
    text,
    test,
    probability: 1,
  });
  const questions: Question[] = [];
  if (valves.some((v) => v.spring === undefined)) {
    questions.push(
      ask('Which spring is on the valve, light or running?', 'Till it is said, running is assumed.'),
    );
  }
  if (valves.some((v) => v.lifter === undefined)) {
    questions.push(ask('Is the lifter solid or hydraulic?', 'Till it is said, hydraulic is assumed.'));
  }
  if (given.input.lash === undefined && valves.some((v) => !v.lashSet)) {
    questions.push(ask('Was the lash taken out for the reading?', 'Till it is said, either is possible.'));
  }
  return questions;
}

/** True if a hydraulic lifter's passes fall, every one, by more than the limit on average. */
export function isSinking(given: Case): boolean {
  const lifts = given.input.readings
    .filter((r) => r.of === 'valve-lift' && r.atLobeLift === undefined && isHydraulic(r))
    .map((r) => r.value);
  const first = lifts[0];
  const last = lifts[lifts.length - 1];
  if (first === undefined || last === undefined || lifts.length < 2) return false;
  const falls = lifts.every((lift, i) => i === 0 || lift < (lifts[i - 1] ?? lift));
  return falls && (first - last) / (lifts.length - 1) > given.assumed.sinkingPerPass;
}

function sinkingQuestion(given: Case): Question[] {
  if (!isSinking(given)) return [];
  return [
    {
      cause: 'sinking',
      text: 'The passes fall: the lifter is sinking. Their mean means nothing.',
      test: 'Use a solid lifter, or one locked solid of the same seat height, under a light spring.',
      probability: 1,
    },
  ];
}

/** All questions for the builder: what was not said, sinking, then the mistakes. */
export function questionsFor(given: Case, belief: Belief, weights: Float64Array): Question[] {
  return [...stateQuestions(given), ...sinkingQuestion(given), ...mistakeQuestions(given, belief, weights)];
}
