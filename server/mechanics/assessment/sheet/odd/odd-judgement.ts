import type { AssessedQuestion, Judgement } from '../../assessment.ts';
import { answerSaid, chosenOf } from '../../common/chosen.ts';
import { placeOf, valveSubject } from '../../common/said.ts';
import type { Side, ValvePlace } from '../../evidence.ts';
import type { SheetOddDetail, SheetSideDetail } from '../rows/detail.ts';
import { isMarked } from './marked-told.ts';
import { oddNeeds, oddSaid } from './odd-said.ts';

/** What an odd valve waits for; the swap behind what takes no part off. */
export const oddLacks = (odd: SheetOddDetail): string[] => [
  ...oddNeeds(odd),
  ...(odd.swap === undefined ? [] : [odd.swap]),
];

/** What is told of each odd valve; the swap is what it still lacks. */
export const oddJudgements = (
  { odd, spring }: SheetSideDetail,
  restsOn: (place: ValvePlace) => readonly string[],
): Judgement[] =>
  odd
    .filter((each) => !isMarked(each))
    .map((each) => ({
      id: each.judgementId,
      about: valveSubject(each),
      against: { to: 'siblings' },
      word: 'odd',
      sentence: `${placeOf(each)} is the odd one${spring === 'not-said' ? '' : ` on the ${spring} spring`}. ${oddSaid(each)}`,
      lacks: oddLacks(each),
      restsOn: restsOn(each),
    }));

/** What is done since it was answered: put right what was wrong, or what its answer leads to. */
const todoOf = (question: AssessedQuestion): string | undefined => {
  if (question.answered === undefined) return undefined;
  if (question.answered.found)
    return question.about.of === 'build'
      ? 'enter those readings again, or strike them out with the reason'
      : 'enter it again, or strike it out with the reason';
  const chosen = chosenOf(question);
  return chosen === undefined ? undefined : SINCE[chosen];
};

/** Answers that leave a row in doubt until something is done. */
const SINCE: Readonly<Record<string, string>> = {
  again: 'read it once more, the same way',
  both: 'look at base, lifter and lash first, then read it again both ways',
};

function notYet(question: AssessedQuestion): string {
  const todo = todoOf(question);
  return todo === undefined
    ? `First: ${question.ask}`
    : `“${question.ask}” was answered “${answerSaid(question)}”: ${todo}.`;
}

/** What is done about it; of an answer, to what. */
function waitsFor(question: AssessedQuestion): string {
  if (question.answered?.found) return 'what was read wrong entered again, or struck out';
  return todoOf(question) === undefined
    ? `the answer to “${question.ask}”`
    : 'a third reading, taken the same way';
}

/** A row in doubt is not set against its siblings: the question comes first. */
function doubtJudgement(place: ValvePlace, question: AssessedQuestion): Judgement {
  return {
    id: `odd:in-doubt:${place.cylinder}-${place.valve}`,
    about: valveSubject(place),
    against: { to: 'siblings' },
    sentence: `${placeOf(place)} is not set against the others yet. ${notYet(question)}`,
    lacks: [waitsFor(question)],
    restsOn: question.restsOn,
  };
}

/** The same of a whole column: said once for all of its valves. */
function columnJudgement(side: Side, question: AssessedQuestion): Judgement {
  return {
    id: `odd:in-doubt:${side}`,
    about: { of: 'side', valve: side },
    against: { to: 'siblings' },
    sentence: `The ${side} valves are not set against one another yet. ${notYet(question)}`,
    lacks: [waitsFor(question)],
    restsOn: question.restsOn,
  };
}

/** The same of rows of both sides, by one question. */
function sheetJudgement(question: AssessedQuestion): Judgement {
  return {
    id: `odd:in-doubt:sheet:${question.code}`,
    about: { of: 'build' },
    against: { to: 'siblings' },
    sentence: `The valves asked about are not set against the others yet. ${notYet(question)}`,
    lacks: [waitsFor(question)],
    restsOn: question.restsOn,
  };
}

function judgementOf(place: ValvePlace, question: AssessedQuestion): Judgement {
  const { about } = question;
  if (about.of === 'build') return sheetJudgement(question);
  return about.of === 'side' ? columnJudgement(about.valve, question) : doubtJudgement(place, question);
}

/** Why rows are not set against their siblings, row by row; of a column that is doubted as a whole once. */
export function inDoubtJudgements<Row extends ValvePlace>(
  rows: readonly Row[],
  doubtsOf: (row: Row) => readonly AssessedQuestion[],
): Judgement[] {
  const told = rows.flatMap((row) => {
    const [question] = doubtsOf(row);
    if (question === undefined) return [];
    return [judgementOf(row, question)];
  });
  return [...new Map(told.map((each) => [each.id, each])).values()];
}
