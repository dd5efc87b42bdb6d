import { answersTo } from '../../../shared/schemas/noise.ts';
import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { questionId } from '../../mechanics/assessment/noise/asked.ts';
import { stopsIt } from '../../mechanics/assessment/noise/stops.ts';

/** One press for each sign of damage: it is kept as the answer, and stops the call with it as the reason. */
export function signForm({ base }: CallContext, { ask }: Pick<AssessedQuestion, 'ask'>): PageForm {
  const signs = Object.entries(answersTo('noise-signs')).filter(([answer]) => stopsIt('noise-signs', answer));
  return {
    name: 'sign',
    action: `${base}/answers`,
    title: 'Any of these: nobody turns it from then on',
    labels: {},
    hidden: {
      step: 'noise',
      question: ask,
      code: 'noise-signs',
      questionId: questionId('noise-signs'),
    },
    groups: () => [],
    buttons: signs.map(([value, label]) => ({ label, kind: 'danger', name: 'answer', value })),
  };
}
