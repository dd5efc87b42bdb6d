import { placeOf } from '../../mechanics/assessment/common/said.ts';
import type { Answer } from '../../records/answers/answers.ts';

/** What was answered, word for word, with the valve that it names: `one, 6 intake`. */
export const saidText = ({ answer, place }: Pick<Answer, 'answer' | 'place'>): string =>
  place === undefined ? answer : `${answer}, ${placeOf(place)}`;
