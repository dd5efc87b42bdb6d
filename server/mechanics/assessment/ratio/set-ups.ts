import { placeOf } from '../common/said.ts';
import type { AnswerEvidence, Evidence, SetUpEvidence } from '../evidence.ts';
import { answersOf, codeOf, foundBy, stateIn } from './answers.ts';

/** A set-up as it is known now, with what was looked at since. */
export interface SetUpNow extends SetUpEvidence {
  /** The arm was not named for it, but no other was ever named on this valve. */
  readonly armTaken: boolean;
  /** Answers to its questions, the earlier first. */
  readonly answers: readonly AnswerEvidence[];
}

/** Arms that were ever named on the valve: with a set-up, on the sheet, or as what sits there now. */
function armsNamed(evidence: Evidence, place: string): ReadonlySet<string> {
  const all = [...evidence.setUps, ...evidence.sheet.filter(({ standing }) => standing), ...evidence.seats];
  return new Set(all.filter((each) => placeOf(each) === place).flatMap(({ armId }) => armId ?? []));
}

function armOf(evidence: Evidence, setUp: SetUpEvidence): Pick<SetUpNow, 'armId' | 'armTaken'> {
  if (setUp.armId !== undefined) return { armId: setUp.armId, armTaken: false };
  const named = [...armsNamed(evidence, placeOf(setUp))];
  const [only] = named;
  return named.length === 1 && only !== undefined ? { armId: only, armTaken: true } : { armTaken: false };
}

type State = Pick<SetUpEvidence, 'spring' | 'lifter' | 'lash' | 'alignment'>;

/** What an answer says of how the set-up was; a state that was said then stands unless the answer is about it. */
function stateBy(answer: AnswerEvidence): Partial<State> {
  const found = foundBy(answer);
  const { answer: text } = answer;
  switch (codeOf(answer)) {
    case 'spring-not-said': {
      const spring = stateIn(text, ['light', 'running'] as const);
      return spring === undefined ? {} : { spring };
    }
    case 'lifter-not-said': {
      const lifter = stateIn(text, ['locked', 'solid', 'hydraulic'] as const);
      return lifter === undefined ? {} : { lifter };
    }
    case 'lash-not-said': {
      const lash = stateIn(text, ['zero', 'set'] as const);
      if (lash !== undefined) return { lash };
      return found === undefined ? {} : { lash: found ? 'set' : 'zero' };
    }
    case 'lash-left-in':
      return found === undefined ? {} : { lash: found ? 'set' : 'zero' };
    case 'plunger-tilted':
      return found === undefined ? {} : { alignment: found ? 'leaning' : 'parallel' };
    default:
      return {};
  }
}

/** Questions about a state: where two of them say something else, the one that was looked at goes last and stands. */
const OF_STATE = [
  'spring-not-said',
  'lifter-not-said',
  'lash-not-said',
  'lash-left-in',
  'plunger-tilted',
] as const;

function asKnownNow(evidence: Evidence, setUp: SetUpEvidence): SetUpNow {
  const answers = answersOf(setUp.id, evidence.answers);
  let state: Partial<State> = {};
  for (const code of OF_STATE) {
    const answer = answers.findLast((each) => codeOf(each) === code);
    if (answer !== undefined) state = { ...state, ...stateBy(answer) };
  }
  return { ...setUp, ...state, ...armOf(evidence, setUp), answers };
}

/** The set-ups by their number, each as it is known now: what is said late judges the readings already there. */
export const setUpsNow = (evidence: Evidence): SetUpNow[] =>
  evidence.setUps.map((setUp) => asKnownNow(evidence, setUp)).sort((a, b) => a.number - b.number);
