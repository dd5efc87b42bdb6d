import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { passSaid } from './passes-repeat.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Whether a pass is of the other place is asked before it is entered again: how its lack would begin. */
const ofOtherLift = ({ standing }: SetUpRead, questions: readonly AssessedQuestion[]): string[] =>
  questions
    .filter(({ code, answered }) => code === 'pass-of-other-lift' && answered === undefined)
    .flatMap(({ restsOn }) => standing.filter(({ id }) => restsOn.includes(id)))
    .map((pass) => `${passSaid(pass)} entered again or struck out: it reads`);

/** Passes that drift lie apart by that: the base is looked at before any more are taken. */
const ofDrift = ({ lobe, valve }: SetUpRead, questions: readonly AssessedQuestion[]): string[] => {
  const drifting = questions.filter((each) => each.code === 'drifting-passes' && inDoubt(each));
  const isOf = (ids: readonly string[]) =>
    drifting.some(({ restsOn }) => restsOn.every((id) => ids.includes(id)));
  const kinds = [
    ...(isOf(lobe.passes.used.map(({ id }) => id)) ? ['lobe'] : []),
    ...(isOf(valve.used.map(({ id }) => id)) ? ['valve'] : []),
  ];
  return kinds.flatMap((kind) => [
    `one more pass of the ${kind} lift:`,
    `passes of the ${kind} lift that repeat`,
  ]);
};

/** Lacks that wait for an answer, each by how it begins: nobody enters or reads again what is asked about first. */
export const askedBefore = (own: SetUpRead, questions: readonly AssessedQuestion[]): string[] => [
  ...ofOtherLift(own, questions),
  ...ofDrift(own, questions),
];
