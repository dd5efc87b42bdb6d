import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { answerOf } from '../../call/answered.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { must } from '../../call/needs.ts';
import type { Need } from '../../call/step.ts';
import type { Question } from '../../mechanics/questions/types.ts';
import { stillStanding } from '../../records/corrections/entries.ts';

/** As many passes of the lobe and of the valve as common practice reads; no published source. */
const PASSES = 3;

/** Questions of a set-up that nobody has answered yet. */
const openQuestions = ({ answers }: CallContext, { setUp, questions }: SetUpRatio): readonly Question[] =>
  questions.filter((question) => answerOf(answers, setUp.id, question) === undefined);

/** What a ratio on the engine still lacks, by its newest set-up. */
export function ratioNeeds(context: CallContext): Need[] {
  const found = context.ratios.at(-1);
  if (found === undefined) return [must('how it is measured, before the first reading', false)];
  const { spring, lifter, lash, lobeSource } = found.setUp.method;
  const on = valveName(found.setUp);
  const lobes = found.lobe.readings.length;
  const valves = stillStanding(found.readings).filter(({ kind }) => kind === 'valve-lift').length;
  const onLight = context.ratios.some(
    ({ result, setUp }) => result !== undefined && setUp.method.spring === 'light',
  );
  return [
    must('spring, lifter and lash said', ![spring, lifter, lash].includes('not-said')),
    ...(lobeSource === 'indicator'
      ? [must(`lobe lift ${on}: ${lobes} of ${PASSES} passes`, lobes >= PASSES)]
      : []),
    must(`valve lift ${on}: ${valves} of ${PASSES} passes`, valves >= PASSES),
    ...openQuestions(context, found).map(({ ask }) => must(ask, false)),
    must('a reading on a light spring, to set against the stamp', onLight),
  ];
}
