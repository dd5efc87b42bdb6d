import { isLike } from '../../tip-mark/called-wide.ts';
import { INK } from '../../tip-mark/least-width.ts';
import { alongRocker } from '../../tip-mark/next-length.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { picked, pickOf } from '../common/pick.ts';
import { byId, inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { comparable } from './asked-of.ts';
import { isOverhead } from './context-of.ts';
import { isOneSetting } from './one-setting.ts';
import { markOf } from './order.ts';
import { placeSaid } from './place-said.ts';

/**
 * Made alike: with the same length, on the same shims, by the same arm, and found in the same way. Another arm of the same
 * mark is another one here: what was changed on the record may have moved it.
 */
const isMadeAlike = (a: TipMarkEvidence, b: TipMarkEvidence): boolean =>
  (a.armId === undefined || b.armId === undefined || a.armId === b.armId) &&
  isOneSetting(a, b) &&
  isLike(markOf(a), markOf(b));

/** One toward the valley and one toward the exhaust side, further apart than ink is read to. */
function pullApart(a: TipMarkEvidence, b: TipMarkEvidence): boolean {
  const sides = new Set([a.side, b.side]);
  if (!sides.has('valley') || !sides.has('exhaust')) return false;
  const [here, there] = [alongRocker(a), alongRocker(b)];
  return here === undefined || there === undefined || Math.abs(here - there) > INK;
}

type Apart = readonly [TipMarkEvidence, ...TipMarkEvidence[]];

/** Those of one setting that pull against each other; by id, since which was entered first says nothing. */
function apartFrom(kept: readonly TipMarkEvidence[]): Apart | undefined {
  const against = kept.filter((mark) =>
    kept.some((other) => isMadeAlike(mark, other) && pullApart(mark, other)),
  );
  const [one] = against;
  const [first, ...others] =
    one === undefined ? [] : against.filter((mark) => isMadeAlike(one, mark)).toSorted(byId);
  return first === undefined ? undefined : [first, ...others];
}

function askedOf(marks: Apart, evidence: Evidence): AssessedQuestion {
  const [first] = marks;
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
          code: pickOf('mark', at),
          label: `The one ${inches(mark.width)} wide, ${placeSaid(mark, { follower })}`,
          changes:
            marks.length > 2
              ? 'It is gone by; the others stay on record and are put aside.'
              : 'It is gone by; the other stays on record and is put aside.',
        })),
        {
          code: 'neither',
          label: 'Nobody can say',
          changes: `${marks.length > 2 ? 'All' : 'Both'} are put aside, and it is inked once more.`,
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

/** Marks without those that were put aside for one that holds; of an overhead cam no side is gone by. */
export function settled(marks: readonly TipMarkEvidence[], evidence: Evidence): Settled {
  if (isOverhead(evidence)) return { kept: marks, open: false };
  const apart = apartFrom(comparable(evidence, marks));
  if (apart === undefined) return { kept: marks, open: false };
  const question = askedOf(apart, evidence);
  const chosen = chosenOf(question);
  if (chosen === undefined) return { kept: marks, question, open: true };
  const holds = picked('mark', apart, chosen)?.id;
  const ids = new Set(apart.map(({ id }) => id));
  return {
    kept: marks.filter(({ id }) => id === holds || !ids.has(id)),
    question,
    open: false,
  };
}
