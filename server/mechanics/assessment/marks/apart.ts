import type { ShortAdvice } from '../../tip-mark/advice-short.ts';
import { isLike } from '../../tip-mark/called-wide.ts';
import { INK } from '../../tip-mark/least-width.ts';
import { alongRocker, ONE_LENGTH } from '../../tip-mark/next-length.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { byId, inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { comparable } from './asked-of.ts';
import { markOf } from './order.ts';
import { placeSaid } from './place-said.ts';

/** While that is open, or nobody can say, no direction is told. */
export const WHICH_MARK: ShortAdvice = {
  said: 'Two marks made alike sit on opposite sides of the middle: say first which one holds.',
  todo: true,
};
export const INK_ONCE_MORE: ShortAdvice = {
  said: 'Ink it once more as it was, two whole turns by hand, and enter that mark: nothing is told from the two.',
  todo: true,
};

const oneSetting = (a: number | undefined, b: number | undefined): boolean =>
  a === undefined || b === undefined ? a === b : Math.abs(a - b) < ONE_LENGTH;

/** Made alike: with the same length, on the same shims, by the same arm, and found in the same way. */
const isMadeAlike = (a: TipMarkEvidence, b: TipMarkEvidence): boolean =>
  (a.armId === undefined || b.armId === undefined || a.armId === b.armId) &&
  oneSetting(a.pushrod, b.pushrod) &&
  oneSetting(a.shims, b.shims) &&
  isLike(markOf(a), markOf(b));

/** One toward the valley and one toward the exhaust side, further apart than ink is read to. */
function pullApart(a: TipMarkEvidence, b: TipMarkEvidence): boolean {
  const sides = new Set([a.side, b.side]);
  if (!sides.has('valley') || !sides.has('exhaust')) return false;
  const [here, there] = [alongRocker(a), alongRocker(b)];
  return here === undefined || there === undefined || Math.abs(here - there) > INK;
}

/** Those of one setting that pull against each other; by id, since which was entered first says nothing. */
function apartFrom(kept: readonly TipMarkEvidence[]): readonly TipMarkEvidence[] {
  const against = kept.filter((mark) =>
    kept.some((other) => isMadeAlike(mark, other) && pullApart(mark, other)),
  );
  const [first] = against;
  return first === undefined ? [] : against.filter((mark) => isMadeAlike(first, mark)).toSorted(byId);
}

function askedOf(marks: readonly TipMarkEvidence[], evidence: Evidence): AssessedQuestion {
  const [first] = marks;
  if (first === undefined) throw new Error('no marks to ask of');
  const { pushrod } = first;
  const follower = evidence.engine.gear === 'finger-follower';
  return asked(
    {
      code: 'marks-apart',
      weight: 'strong',
      ask: `The marks of ${placeOf(first)}${pushrod === undefined ? '' : ` at ${inches(pushrod)}`} sit on opposite sides of the middle. Which one holds?`,
      knownBy: 'which of the marks on opposite sides holds',
      size: 'Nothing that moves a mark was changed between them on the record.',
      test: 'ask whoever inked them which one holds, and what was changed between them.',
      byLooking: true,
      restsOn: marks.map(({ id }) => id),
    },
    {
      about: valveSubject(first),
      step: 'geometry',
      among: marks.map(({ id }) => id).join('-'),
      answers: evidence.answers,
      choices: [
        ...marks.map((mark, at) => ({
          code: `mark-${at + 1}`,
          label: `The one ${inches(mark.width)} wide, ${placeSaid(mark, { follower })}`,
          changes: 'It is gone by; the other stays on record and is put aside.',
        })),
        {
          code: 'neither',
          label: 'Nobody can say',
          changes: 'Both are put aside, and it is inked once more.',
        },
      ],
    },
  );
}

/** What is left of marks that pull apart, and the question which holds; `open`: nobody has said. */
export interface Settled {
  readonly kept: readonly TipMarkEvidence[];
  readonly question?: AssessedQuestion;
  readonly open: boolean;
}

/** Marks without those that were put aside for one that holds. */
export function settled(marks: readonly TipMarkEvidence[], evidence: Evidence): Settled {
  const apart = apartFrom(comparable(evidence, marks));
  if (apart.length === 0) return { kept: marks, open: false };
  const question = askedOf(apart, evidence);
  const chosen = chosenOf(question);
  if (chosen === undefined) return { kept: marks, question, open: true };
  const holds = apart.find((_, at) => chosen === `mark-${at + 1}`)?.id;
  const ids = new Set(apart.map(({ id }) => id));
  return {
    kept: marks.filter(({ id }) => id === holds || !ids.has(id)),
    question: { ...question, weight: 'weak' },
    open: false,
  };
}
