import { planOf } from '../../../../shared/schemas/goals.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { listed } from '../common/said.ts';
import { twoNumbersAsked } from '../common/two-numbers.ts';
import type { ArmEvidence, Evidence } from '../evidence.ts';
import { armsInBoxes } from './arm-in-box.ts';
import { partsInHand } from './in-hand.ts';

/* A part in the hand that is an arm of the build has one set of marks, wherever it was read; no kind is taken for another. */

const FIELDS = { ratioStamp: 'ratio-stamp', otherNumber: 'other-number', boxLabel: 'box-label' } as const;
type Field = keyof typeof FIELDS;
const NAMES: readonly Field[] = ['ratioStamp', 'otherNumber', 'boxLabel'];
const CALLED: Readonly<Record<Field, string>> = {
  ratioStamp: 'ratio stamp',
  otherNumber: 'other number',
  boxLabel: 'box label',
};

/** What was read in the hand of the arm, each text once. */
function readInHand(evidence: Evidence, { id }: ArmEvidence, field: Field): string[] {
  const texts = partsInHand(evidence)
    .filter(({ armId }) => armId === id)
    .flatMap(({ readings }) =>
      readings.flatMap(({ kind, typed }) => (kind === FIELDS[field] ? [typed.trim()] : [])),
    );
  return [...new Set(texts.filter((text) => text !== ''))].sort();
}

/** The arms with the marks that were read of them in the hand, where none is on record: whenever it was said. */
export function withPartMarks(evidence: Evidence): Evidence {
  if (evidence.arms.length === 0 || evidence.part.length === 0) return evidence;
  const arms = evidence.arms.map((arm) => {
    const own = { ...arm };
    for (const field of NAMES) {
      const [only, ...others] = readInHand(evidence, arm, field);
      if (own[field].trim() === '' && only !== undefined && others.length === 0) own[field] = only;
    }
    return own;
  });
  return { ...evidence, arms };
}

const SET: readonly AnswerChoice[] = [
  { code: 'one-set', label: 'Looked: they are one set', changes: 'Each arm keeps its own marks.' },
  {
    code: 'mixed',
    label: 'The set is mixed',
    changes: 'Each arm is judged by its own marks, and its lot is its own.',
  },
];

const WHICH: readonly AnswerChoice[] = [
  {
    code: 'record',
    label: 'The one on record',
    changes: 'What was read in the hand is struck out with the reason.',
  },
  { code: 'hand', label: 'The one read in the hand', changes: 'The arm on record is put right.' },
];

/** `1.6 on A, B and C; 1.5 on D` */
function groupsSaid(arms: readonly ArmEvidence[], field: Field): string {
  const texts = [...new Set(arms.map((arm) => arm[field].trim()))].sort();
  const of = (text: string) => arms.filter((arm) => arm[field].trim() === text).map(({ name }) => name);
  return texts
    .toSorted((a, b) => of(b).length - of(a).length)
    .map((text) => `“${text}” on ${listed(of(text).sort())}`)
    .join('; ');
}

/** Arms that sit on the engine together and are marked differently: a set of mixed lots, or one of another ratio. */
function mixedSet(evidence: Evidence): AssessedQuestion[] {
  const { arms, seats, answers, call } = evidence;
  if (planOf(call.goal).isChange === true) return [];
  const seated = new Set(seats.map(({ armId }) => armId));
  const together = seated.size < 2 ? arms : arms.filter(({ id }) => seated.has(id));
  return (['ratioStamp', 'otherNumber'] as const).flatMap((field) => {
    const marked = together.filter((arm) => arm[field].trim() !== '');
    if (new Set(marked.map((arm) => arm[field].trim())).size < 2) return [];
    return [
      asked(
        {
          code: 'arms-marked-apart',
          weight: 'weak',
          ask: `The arms do not all have the same ${CALLED[field]}: ${groupsSaid(marked, field)}. Are they one set?`,
          knownBy: `do the arms carry one ${CALLED[field]}`,
          test: 'look at every arm of the set again, and give each its own marks, word for word',
          byLooking: true,
          restsOn: [],
        },
        { about: { of: 'build' }, step: 'parts', among: FIELDS[field], answers, choices: SET },
      ),
    ];
  });
}

/** A mark on record, and another one read of the same arm in the hand. */
function markedTwoWays(evidence: Evidence): AssessedQuestion[] {
  return evidence.arms.flatMap((arm) =>
    NAMES.flatMap((field) => {
      const own = arm[field].trim();
      const others = readInHand(evidence, arm, field).filter((text) => text !== own);
      if (own === '' || others.length === 0) return [];
      return [
        asked(
          {
            code: 'arm-marked-two-ways',
            weight: 'weak',
            ask: `${arm.name} has the ${CALLED[field]} “${own}” on record, and “${others.join('” and “')}” was read in the hand. Which is on it?`,
            knownBy: `which ${CALLED[field]} is on the arm`,
            test: 'read the mark on the arm again, word for word, and put the other entry right',
            byLooking: true,
            restsOn: [],
          },
          {
            about: { of: 'arm', armId: arm.id, name: arm.name },
            step: 'parts',
            among: FIELDS[field],
            answers: evidence.answers,
            choices: WHICH,
          },
        ),
      ];
    }),
  );
}

/** What the marks of the arms are asked. */
export const armMarkQuestions = (evidence: Evidence): AssessedQuestion[] => [
  ...mixedSet(evidence),
  ...evidence.arms.flatMap((arm) => twoNumbersAsked(evidence, arm) ?? []),
  ...armsInBoxes(evidence),
  ...markedTwoWays(evidence),
];
