import type { AssessedQuestion, NextAction } from '../../../../server/mechanics/assessment/assessment.ts';
import { keyOf } from '../../../../server/mechanics/assessment/common/said.ts';
import type { Law } from './law.ts';

/** Lobes beside one that is low tell whether it is worn: what of them is asked is the question of that lobe. */
const OF_ACTION: Readonly<Record<string, string>> = { 'lobe-siblings': 'lobe-under-card' };

/** What is next is the test of this question, has its words as the reason, or reads what it is about. */
function restsOn({ id, action, reason, about }: NextAction, question: AssessedQuestion): boolean {
  const isHere = about.of === 'build' || keyOf(about) === keyOf(question.about);
  const isOf = reason === question.ask || [action, OF_ACTION[action]].includes(question.code);
  return id === `next:${question.id}` || (isOf && isHere);
}

/**
 * Law 6: what is next and the questions agree. The open question that what is next rests on stands before every other
 * one, and is no weaker than another of its set-up.
 */
export const nextRestsOnTheFirst: Law = ({ assessment: { next, questions } }) => {
  const open = questions.filter(({ answered }) => answered === undefined);
  const own = next === undefined ? undefined : open.find((question) => restsOn(next, question));
  if (own === undefined) return [];
  const stronger = open.filter(
    ({ about, weight }) => own.weight === 'weak' && weight === 'strong' && keyOf(about) === keyOf(own.about),
  );
  return [
    ...(own.weight === 'weak' ? [`${own.id}: is weak, and next rests on it`] : []),
    ...stronger.map(({ id }) => `${own.id}: is weaker than ${id}, and next rests on it`),
    ...(open[0] === own ? [] : [`${own.id}: stands behind ${open[0]?.id}`]),
  ];
};
