import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { sameRatio } from '../common/same-ratio.ts';
import { ratioNamedIn } from '../common/stamp-read.ts';
import type { ArmEvidence, Evidence } from '../evidence.ts';
import { partsInHand } from './in-hand.ts';
import { ratioStamped } from './marks-apart.ts';

/* The box of an arm on record that names another ratio than its stamp: it may be the box of another arm. */

const boxOf = ({ boxLabel, boxOfAnother }: ArmEvidence): string => (boxOfAnother ?? boxLabel).trim();

/** Its stamp and its box were read of a part in the hand: they are asked about there. */
const isAskedInHand = (evidence: Evidence, { id }: ArmEvidence): boolean =>
  partsInHand(evidence).some(
    ({ armId, readings }) =>
      armId === id &&
      ['ratio-stamp', 'box-label'].every((kind) => readings.some((each) => each.kind === kind)),
  );

/** Read on the engine, the reading is set against both, and it is asked which of them was ordered. */
const isRead = ({ setUps, passes }: Evidence, { id }: ArmEvidence): boolean =>
  setUps.some(
    (setUp) => setUp.armId === id && passes.some(({ standing, setUpId }) => standing && setUpId === setUp.id),
  );

function askedOf(evidence: Evidence, arm: ArmEvidence): AssessedQuestion | undefined {
  const [stamp, box] = [ratioStamped(arm.ratioStamp), ratioNamedIn(boxOf(arm))];
  if (stamp === undefined || box === undefined || sameRatio(stamp, box)) return undefined;
  if (isAskedInHand(evidence, arm)) return undefined;
  const question = asked(
    {
      code: 'box-against-stamp',
      weight: 'strong',
      ask: `${arm.name} is stamped “${arm.ratioStamp.trim()}”, and its box says “${boxOf(arm)}”. Is it the box of this arm?`,
      knownBy: 'is it the box of this arm',
      test: 'hold the other numbers of arm and box beside one another, and ask where the box came from',
      byLooking: true,
      restsOn: [],
    },
    {
      about: { of: 'arm', armId: arm.id, name: arm.name },
      step: 'parts',
      // Of these two alone: a mark that is put right is asked about once more.
      among: `${stamp.toFixed(3)}-${box.toFixed(3)}`,
      answers: evidence.answers,
      choices: [
        {
          code: 'found',
          label: 'No, it is of another arm',
          changes: 'The box does not count for this arm.',
          leadsTo: 'nothing',
        },
        {
          code: 'not-found',
          label: 'Yes, it came in it',
          changes:
            'Both stay as they were typed, and whoever packed it is told; only a valve tells the ratio.',
        },
      ],
    },
  );
  return question.answered === undefined && isRead(evidence, arm) ? undefined : question;
}

/** Whether the box of an arm is its own, where it names another ratio than the stamp. */
export const armsInBoxes = (evidence: Evidence): AssessedQuestion[] =>
  evidence.arms.flatMap((arm) => askedOf(evidence, arm) ?? []);

/** The arms without boxes that were found to be of another one. */
export function withOwnBoxes(evidence: Evidence): Evidence {
  const isOthers = (arm: ArmEvidence): boolean => {
    const question = askedOf(evidence, arm);
    return question !== undefined && chosenOf(question) === 'found';
  };
  if (!evidence.arms.some(isOthers)) return evidence;
  return {
    ...evidence,
    arms: evidence.arms.map((arm) =>
      isOthers(arm) ? { ...arm, boxLabel: '', boxOfAnother: arm.boxLabel } : arm,
    ),
  };
}
