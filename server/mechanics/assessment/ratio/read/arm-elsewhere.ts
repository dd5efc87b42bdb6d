import { beginsWith } from '../../../../../shared/begins-with.ts';
import type { AnswerChoice } from '../../assessment.ts';
import type { Doubt } from '../../common/asked.ts';
import { placeOf } from '../../common/said.ts';
import type { AnswerEvidence, Evidence, SatThen, SetUpEvidence, SetUpFact } from '../../evidence.ts';
import { codeOf } from './answers.ts';
import type { SetUpRead } from './set-up-read.ts';
import type { SetUpNow } from './set-ups.ts';

export const ARM_ELSEWHERE = 'arm-sits-elsewhere';

/** The arm that is named sat on another valve then, and by the record it never sat on this one. */
function elsewhere({ armId, satThen = [], ...place }: SetUpEvidence): SatThen | undefined {
  const sat = satThen.find((each) => armId !== undefined && each.armId === armId);
  return sat?.everOn.some((each) => placeOf(each) === placeOf(place)) === false ? sat : undefined;
}

/** The arm that sat on the valve then. */
const sittingThere = ({ satThen = [], ...place }: SetUpEvidence): string | undefined =>
  satThen.find((each) => placeOf(each) === placeOf(place))?.armId;

const WORDS = ['moved', 'arm-there', 'other-arm', 'other-valve'] as const;

/** The word that the answer begins with: “no, it was not moved” denies one and says no other. */
const saidIn = (answer: AnswerEvidence) =>
  codeOf(answer) === ARM_ELSEWHERE ? WORDS.find((word) => beginsWith(answer.answer, word)) : undefined;

/** What the answer makes of the set-up: another arm, none that is known, or another valve. */
export function armBy(
  answer: AnswerEvidence,
  setUp: SetUpEvidence,
): { readonly says: Partial<Pick<SetUpEvidence, SetUpFact>>; readonly notKnown: readonly 'armId'[] } {
  const there = sittingThere(setUp);
  const sat = elsewhere(setUp);
  switch (saidIn(answer)) {
    case 'arm-there':
      return there === undefined
        ? { says: {}, notKnown: ['armId'] }
        : { says: { armId: there }, notKnown: [] };
    case 'other-arm':
      return { says: {}, notKnown: ['armId'] };
    case 'other-valve':
      return { says: sat === undefined ? {} : { cylinder: sat.cylinder, valve: sat.valve }, notKnown: [] };
    default:
      return { says: {}, notKnown: [] };
  }
}

const isMoved = ({ answers }: SetUpNow): boolean => {
  const last = answers.findLast((answer) => codeOf(answer) === ARM_ELSEWHERE);
  return last !== undefined && saidIn(last) === 'moved';
};

const nameOf = ({ arms }: Evidence, armId: string | undefined): string =>
  arms.find(({ id }) => id === armId)?.name ?? 'the arm';

/** The set-up was entered for the valve that the arm sat on, and answered to be of another since: nobody said that it moved. */
const isValveMoved = ({ setUps }: Evidence, setUp: SetUpNow, sat: SatThen): boolean =>
  setUps.some((entered) => entered.id === setUp.id && placeOf(entered) === placeOf(sat)) &&
  placeOf(setUp) !== placeOf(sat);

/** An arm that by the record sat on another valve: it was moved and nobody said so, or another arm or valve was meant. */
export function armElsewhereAsked(
  evidence: Evidence,
  { setUp, valve }: SetUpRead,
): (Doubt & { readonly code: typeof ARM_ELSEWHERE })[] {
  const sat = elsewhere(setUp);
  if (sat === undefined) return [];
  const name = nameOf(evidence, setUp.armId);
  return [
    {
      code: ARM_ELSEWHERE,
      weight: isMoved(setUp) ? 'weak' : 'strong',
      ask: isValveMoved(evidence, setUp, sat)
        ? `Set-up ${setUp.number} was read on ${placeOf(setUp)}, as was answered, and by the record ${name} sat on ${placeOf(sat)}. Which arm was on?`
        : `By the record ${name} sat on ${placeOf(sat)} when set-up ${setUp.number} was read with it on ${placeOf(setUp)}. Was it moved?`,
      knownBy: 'sat elsewhere by the record',
      size: 'Whose ratio it is, and what a swap tells, hang on it.',
      test: 'Look at the mark on the arm that was read, and ask whether arms were changed over.',
      testAtBench: 'Look at the mark on the arm that was read, and say whether arms were changed over.',
      byLooking: true,
      restsOn: valve.used.map(({ id }) => id),
    },
  ];
}

/** The answers to that, each with what it does. */
export function armElsewhereChoices(evidence: Evidence, { setUp }: SetUpRead): AnswerChoice[] {
  const sat = elsewhere(setUp);
  const there = sittingThere(setUp);
  const here = placeOf(setUp);
  return [
    {
      code: 'moved',
      label: `${nameOf(evidence, setUp.armId)} was moved to ${here}`,
      changes: 'The readings are its own on that valve; the move is then put on record with the arms.',
    },
    there === undefined
      ? {
          code: 'other-arm',
          label: 'Another arm was on',
          changes: 'The readings are held to no mark until that arm is named in the set-up.',
        }
      : {
          code: 'arm-there',
          label: `${nameOf(evidence, there)} was on, which sat there`,
          changes: 'The readings already there count for that arm.',
        },
    ...(sat === undefined
      ? []
      : [
          {
            code: 'other-valve',
            label: `It was read on ${placeOf(sat)}`,
            changes: `The readings already there count for ${placeOf(sat)}.`,
          },
        ]),
  ];
}

/** Moves that were answered and are not on record yet. */
export const movesToRecord = (
  evidence: Evidence,
  setUps: readonly SetUpNow[],
): { readonly key: string; readonly said: string }[] => {
  const open = setUps.filter((setUp) => elsewhere(setUp) !== undefined && isMoved(setUp));
  return open.map((setUp) => ({
    key: `${setUp.cylinder}-${setUp.valve}:${setUp.armId ?? ''}`,
    said: `that ${nameOf(evidence, setUp.armId)} was moved to ${placeOf(setUp)}`,
  }));
};
