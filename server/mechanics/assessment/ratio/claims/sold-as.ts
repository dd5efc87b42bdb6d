import { planOf } from '../../../../../shared/schemas/goals.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import type { Evidence } from '../../evidence.ts';
import { markOn } from './stamp.ts';

/** Of the question, and of what is said without having been asked. */
export const SOLD_AS_KNOWN = 'sold-as-known';
const CODE = SOLD_AS_KNOWN;

/** The rockers are held to be something: sold as it, or stamped. */
export const isHeldToBe = (evidence: Evidence): boolean =>
  evidence.rockers.soldAs !== undefined || evidence.arms.some(({ id }) => markOn(evidence, id) !== undefined);

/** Used and unmarked, nobody may know what they were sold as: that is an answer, and nothing waits for it any more. */
export function soldAsQuestion(evidence: Evidence): AssessedQuestion[] {
  if (isHeldToBe(evidence) || evidence.setUps.length === 0) return [];
  if (!planOf(evidence.call.goal).asks.includes('parts')) return [];
  return [
    asked(
      {
        code: CODE,
        weight: 'weak',
        ask: 'Does anybody know which ratio the rockers are sold as?',
        size: 'Without it a reading is told by itself, and by the names near it.',
        test: 'Look at the box, the invoice and the part number.',
        byLooking: true,
        restsOn: [],
      },
      {
        about: { of: 'build' },
        step: 'parts',
        answers: evidence.answers,
        choices: [
          { code: 'not-known', label: 'Nobody knows', changes: 'It is asked for no more.' },
          { code: 'known', label: 'Yes', changes: 'It is put in under what the rockers are sold as.' },
        ],
      },
    ),
  ];
}

/** Somebody was asked, and nobody knows. */
export const isSoldAsUnknown = (evidence: Evidence): boolean =>
  soldAsQuestion(evidence).some(({ answered }) => answered?.answer.split(':')[0] === 'not-known') ||
  evidence.answers.some(
    ({ code, questionId, answer }) =>
      code === CODE && questionId === undefined && answer.split(':')[0] === 'not-known',
  );
