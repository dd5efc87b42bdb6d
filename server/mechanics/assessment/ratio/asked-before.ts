import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { PassEvidence } from '../evidence.ts';
import type { LiftRead, RatioLack } from './lack.ts';
import { liftOf } from './passes-repeat.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Whether a pass is of the other place is asked before it is entered again: those passes. */
const ofOtherLift = ({ standing }: SetUpRead, questions: readonly AssessedQuestion[]): PassEvidence[] =>
  questions
    .filter(({ code, answered }) => code === 'pass-of-other-lift' && answered === undefined)
    .flatMap(({ restsOn }) => standing.filter(({ id }) => restsOn.includes(id)));

/** Passes that drift lie apart by that: the base is looked at before any more are taken. */
const ofDrift = ({ lobe, valve }: SetUpRead, questions: readonly AssessedQuestion[]): LiftRead[] => {
  const drifting = questions.filter((each) => each.code === 'drifting-passes' && inDoubt(each));
  const isOf = (ids: readonly string[]) =>
    drifting.some(({ restsOn }) => restsOn.every((id) => ids.includes(id)));
  return [
    ...(isOf(lobe.passes.used.map(({ id }) => id)) ? ['lobe' as const] : []),
    ...(isOf(valve.used.map(({ id }) => id)) ? ['valve' as const] : []),
  ];
};

/** Lacks that wait for an answer: nobody enters or reads again what is asked about first. */
export function askedBefore(
  own: SetUpRead,
  questions: readonly AssessedQuestion[],
): (lack: RatioLack) => boolean {
  const otherLift = ofOtherLift(own, questions);
  const drifting = ofDrift(own, questions);
  return (lack) => {
    switch (lack.code) {
      case 'enter-again':
        return (
          lack.byOthers &&
          lack.passes.some(({ lift, pass }) =>
            otherLift.some((each) => liftOf(each) === lift && each.pass === pass),
          )
        );
      case 'one-more-pass':
        return !lack.smallHand && drifting.includes(lack.lift);
      case 'passes-apart':
        return drifting.includes(lack.lift);
      default:
        return false;
    }
  };
}
