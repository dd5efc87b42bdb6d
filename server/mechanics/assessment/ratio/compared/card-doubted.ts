import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { IN } from '../../../kit/si.ts';
import { cardAgainstItself } from '../../../questions/card-ratio.ts';
import { defaultTolerances } from '../../../questions/tolerances.ts';
import type { AnswerChoice, AssessedQuestion } from '../../assessment.ts';
import { done } from '../../common/answers-of.ts';
import { asked, inDoubt } from '../../common/asked.ts';
import { once } from '../../common/once.ts';
import type { AnswerEvidence, Evidence, Side } from '../../evidence.ts';
import { isOfCardLobe } from '../asked/conditions.ts';
import { codeOf } from '../read/answers.ts';
import { answerLack, cardLack, cardLobeLack, type RatioLack } from '../read/lack.ts';
import type { SetUpKnown } from './known.ts';

const CODE = 'card-against-itself';
const SIDES: readonly Side[] = ['intake', 'exhaust'];

/** Two figures of one card: one of them is not what is printed. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'One of them was entered wrong',
    changes: 'The card is entered again, word for word.',
    leadsTo: done('put right on the card what is printed otherwise.'),
  },
  {
    code: 'not-found',
    label: 'Both are as printed',
    changes: 'The card does not agree with itself; both figures stay.',
  },
];

const inch = (si: number | undefined): number | undefined =>
  si === undefined || si <= 0 ? undefined : si / IN;

/** Once it was asked of a set-up: an answer to that is one to the card of its side. */
function answersOn(evidence: Evidence, side: Side): AnswerEvidence[] {
  return evidence.answers.map((answer) => {
    const setUp = evidence.setUps.find(({ id }) => id === answer.setUpId);
    if (setUp === undefined || codeOf(answer) !== CODE || sideOfValve(setUp.valve) !== side) return answer;
    const { questionId: _id, setUpId: _setUp, ...rest } = answer;
    return rest;
  });
}

function askedOn(evidence: Evidence, side: Side): AssessedQuestion[] {
  const { lobeLift, valveLift, lash } = evidence.card[side];
  const doubts = cardAgainstItself(
    {
      cardRatio: evidence.card.assumedRatio,
      cardLobeLift: inch(lobeLift),
      cardValveLift: inch(valveLift),
      cardLash: inch(lash),
    },
    defaultTolerances,
  );
  return doubts.map((doubt) =>
    asked(
      { ...doubt, beforeReading: true, alsoOf: ['ratio', 'sheet'] },
      {
        about: { of: 'side', valve: side },
        step: 'cam',
        answers: answersOn(evidence, side),
        choices: CHOICES,
      },
    ),
  );
}

const askedOfCard = once((evidence: Evidence): AssessedQuestion[] => {
  // A bucket has no ratio, and its card names none.
  if (evidence.engine.gear === 'bucket') return [];
  const all = SIDES.flatMap((side) => askedOn(evidence, side));
  // The same of both sides is asked once, with the answer where one was given.
  return all.filter((question) => {
    const same = all.filter(({ ask }) => ask === question.ask);
    return question === (same.find(({ answered }) => answered !== undefined) ?? same[0]);
  });
});

/** A card whose own figures do not go together, which shows before anything is read. */
export const cardAgainstItselfAsked = (evidence: Evidence): readonly AssessedQuestion[] =>
  askedOfCard(evidence);

/** What is in doubt about the lobe lift that the card has of a side: till it is answered it is no measure of any lobe. */
export function doubtsOfCard(evidence: Evidence, known: readonly SetUpKnown[], side: Side): RatioLack[] {
  const [own] = askedOn(evidence, side);
  const itself = askedOfCard(evidence).filter(({ ask }) => ask === own?.ask);
  const ofSetUps = known
    .filter(({ read }) => sideOfValve(read.setUp.valve) === side)
    .flatMap(({ questions }) => questions)
    .filter(isOfCardLobe);
  const lackOf = (wrong: (question: AssessedQuestion) => RatioLack) => (question: AssessedQuestion) =>
    question.answered?.found === true ? wrong(question) : answerLack(question);
  return [
    ...ofSetUps.filter(inDoubt).map(lackOf(cardLobeLack)),
    ...itself.filter(inDoubt).map(lackOf(cardLack)),
  ];
}
