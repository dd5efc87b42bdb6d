import type { AssessedQuestion } from '../../assessment.ts';

const rank = ({ weight }: AssessedQuestion): number => (weight === 'strong' ? 0 : 1);

/** Of several doubts about the same readings one is asked: the next when it was looked at and does not fit. */
function oneOf(alike: readonly AssessedQuestion[]): AssessedQuestion[] {
  const found = alike.find(({ answered }) => answered?.found === true);
  const settled = alike.filter(({ answered }) => answered?.found === false);
  if (found !== undefined) return [...settled, found];
  const [first, ...others] = alike
    .filter((each) => !settled.includes(each))
    .toSorted((a, b) => rank(a) - rank(b));
  if (first === undefined) return settled;
  const also = others.map(({ ask }) => ask).join(' ');
  return [
    ...settled,
    also === '' ? first : { ...first, size: `${first.size ?? ''} It may also be: ${also}`.trim() },
  ];
}

/** The figures of a row that one slip explains are asked about once, by the doubt that fits them best. */
export function oncePerSlip(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const keyOf = (question: AssessedQuestion) =>
    question.restsOn.length === 0 ? question.id : question.restsOn.join(' ');
  return [...new Set(questions.map(keyOf))].flatMap((key) =>
    oneOf(questions.filter((question) => keyOf(question) === key)),
  );
}
