import { valveSaid } from '../../../../../shared/schemas/words.ts';
import { askedSaid } from '../../common/first-said.ts';
import type { Lack } from '../../common/lack.ts';
import { inches, listed } from '../../common/said.ts';
import { type EnteredAgain, type LiftRead, type PlainLack, type RatioLack, turnsNothing } from './lack.ts';

const PLAIN: Readonly<Record<PlainLack, string>> = {
  'which-spring': 'which spring is on the valve',
  'which-lifter': 'which lifter is under the pushrod',
  'which-lifter-was': 'which lifter was under the pushrod, since the engine is down with solid ones',
  'lash-not-said': 'whether the lash was taken up',
  'lash-in-unknown': 'a reading at zero lash, since lash was left in and how much is not said',
  'lash-in-known': 'a reading at zero lash, since lash was left in',
  'plunger-leans': 'a reading with the plunger parallel to the stem',
  'rests-elsewhere': 'a reading with the plunger on the flat face of the retainer',
  'read-back-wrong': 'the entry that was wrong put right, and the entries read back once more',
  sinking: 'passes that don’t sink: a solid lifter, or one locked solid at the same seat height',
  'may-have-sunk':
    'a reading on a solid or locked lifter: a hydraulic one may have sunk before the first pass',
};

const LIGHT_SPRING_FIRST = 'a reading on a light spring with a solid lifter, at zero lash';

const ofLift = (passes: EnteredAgain['passes'], lift: LiftRead, end: string): string[] => {
  const own = passes.filter((each) => each.lift === lift).map(({ pass }) => String(pass));
  return own.length === 0 ? [] : [`${own.length === 1 ? 'pass' : 'passes'} ${listed(own)}${end}`];
};

/**
 * `pass 2`, `passes 1, 2 and 3 of the lobe`, `pass 2 of the lobe and pass 2 of the valve`; without one of them `the
 * reading`. A pass of each lift may have the same number.
 */
export function passesSaid({ passes }: Pick<EnteredAgain, 'passes'>): string {
  if (passes.length === 0) return 'the reading';
  const lobe = ofLift(passes, 'lobe', ' of the lobe');
  return listed([...lobe, ...ofLift(passes, 'valve', lobe.length === 0 ? '' : ' of the valve')]);
}

/** The words of a lack, named as a thing: they go on from “it lacks” and “first:”. */
export function lackSaid(lack: RatioLack): string {
  switch (lack.code) {
    case 'light-spring-first':
      return lack.sinks
        ? `${LIGHT_SPRING_FIRST}: every pass is under the last, as with a lifter that sinks`
        : LIGHT_SPRING_FIRST;
    case 'guessed':
      return `a reading of the ${lack.lift} lift with a tool: this one is a guess`;
    case 'no-pass':
      return `a pass of the ${lack.lift} lift`;
    case 'none-back-at-zero':
      return `a pass of the ${lack.lift} lift that comes back to zero`;
    case 'one-more-pass':
      return `one more pass of the ${lack.lift} lift${lack.smallHand ? ', small hand first' : ''}: ${lack.why}`;
    case 'passes-apart':
      return `passes of the ${lack.lift} lift that repeat: these lie ${inches(lack.apart)} apart`;
    case 'passes-scatter':
      return `a reading that repeats: these ${lack.passes} passes lie ${inches(lack.apart)} apart; find first what moves, the indicator’s base, its plunger or the lifter`;
    case 'springs-against':
      return `both springs read again, same lifter, lash and zero: the running one reads ${inches(lack.by)} over the light one, and a spring adds no lift`;
    case 'enter-again':
      return `${passesSaid(lack)} entered again or struck out: ${lack.why}`;
    case 'lobe-lift':
      return `the ${valveSaid(lack.valve)} lobe lift on the cam card, or read at the lifter`;
    case 'lobe-lift-from':
      return `where the lobe lift of ${inches(lack.value)} is from: put in with the cam card, or read at the lifter`;
    case 'answer':
      return `the answer to “${lack.ask}”`;
    case 'card-lobe-wrong':
      return `the lobe lift of the card put right: ${askedSaid(lack.ask, lack.label)}`;
    case 'card-wrong':
      return `the card put right: ${askedSaid(lack.ask, lack.label)}`;
    case 'sold-as-other':
      return `the ratio that the part number has, as what they are sold as: ${askedSaid(lack.ask, lack.label)}`;
    case 'which-arm':
      return `which arm was on in ${lack.setUps}, each put right in its set-up`;
    case 'what-moves':
      return `base, lifter and lash looked at, and then three passes more: ${lack.setUps} do not come to the same`;
    case 'same-as':
      return `three passes again: if they come to the same as ${lack.setUps}, what was read here before is struck out`;
    case 'lifts-do-not-go-together':
      return `lifts that go together: these ${lack.why}`;
    case 'not-weighed':
      return lack.why;
    default:
      return PLAIN[lack.code];
  }
}

/** As what is worked out from that ratio waits for it. */
export const asLack = (lack: RatioLack): Lack => ({
  code: 'ratio',
  said: lackSaid(lack),
  turns: !turnsNothing(lack),
  ...(lack.code === 'answer' ? { settles: lack.question } : {}),
});
