import { ASK } from '../../readings/pages/cause-words.ts';
import { nextStep } from '../pages/needs.ts';
import { STEPS } from '../pages/steps.ts';
import { nextOfSetUp } from './sections/explained.ts';
import { nextOfPart } from './sections/identified.ts';
import type { Whole } from './whole.ts';

/** The swap that would tell part from position, where one is still to be done. */
function swapToDo({ sheet }: Whole): string | undefined {
  return sheet?.springs
    .flatMap(({ sides }) => sides.flatMap(({ odd }) => odd.map(({ swap }) => swap)))
    .find((swap) => swap !== undefined);
}

/** Where only a running-spring ratio is there, nothing can be set against the stamp yet. */
function lightSpring({ sight }: Whole): string | undefined {
  const read = sight.ratios.filter(({ result }) => result !== undefined);
  return read.length > 0 && read.every(({ setUp }) => setUp.method.spring !== 'light')
    ? ASK['light-spring-solid-lifter']
    : undefined;
}

/** The next reading, by what the call is about; the step that is open where no reading is worth more. */
export function nextSentences(whole: Whole): string[] {
  const { sight, explained } = whole;
  if (sight.call.held) return ['Photographs only, until the desk lifts the hold.'];
  const newest = sight.setUps.findLast(({ id }) => explained.has(id));
  const ofRatio = newest === undefined ? undefined : explained.get(newest.id);
  const reading = (ofRatio === undefined ? undefined : nextOfSetUp(ofRatio)) ?? lightSpring(whole);
  const part = nextOfPart(whole);
  const swap = swapToDo(whole);
  const wanted =
    sight.call.goal === 'identify'
      ? [part, reading, swap]
      : [reading, swap, reading === undefined ? part : undefined];
  const said = wanted.filter((each) => each !== undefined).slice(0, 2);
  if (said.length > 0)
    return said.map((text) => text.replace(/^Next: (.)/, (_, first: string) => first.toUpperCase()));
  const next = nextStep(sight);
  return [`${STEPS[next.step].link}. ${next.why}`];
}
