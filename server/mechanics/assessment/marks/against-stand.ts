import { EQUAL } from '../../kit/nearest.ts';
import { toSay, toTurn } from '../../tip-mark/advice-short.ts';
import { FINEST } from '../../tip-mark/least-width.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { lastKept } from '../common/kept.ts';
import { inches, listed, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { MarksDetail } from './detail.ts';
import type { MarkedValve } from './marked-valve.ts';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'height',
    label: 'A height of the sum',
    changes: 'The heights are read again, and the sum is kept again; the marks are gone by.',
  },
  {
    code: 'mark',
    label: 'The shims, or a mark',
    changes: 'The valve is inked again with the shims told; the sum is gone by.',
  },
  {
    code: 'neither',
    label: 'Nobody can say',
    changes: 'Heights and marks are read again, and neither is gone by until then.',
  },
];

const SAID = {
  open: toSay('The heights and the marks ask for opposite ways: say first which was read wrong.'),
  height: toTurn('Its heights were read wrong, as was answered: read them again, and keep the sum again.'),
  mark: toTurn(
    'Its shims or a mark were read wrong, as was answered: put them right, or ink it again with the shims told.',
  ),
  neither: toTurn(
    'Read pivot and tip height again, and ink again with the shims told: the two ask for opposite ways.',
  ),
} as const;

/** What is put in the place of either advice while the two speak against each other. */
interface Against {
  readonly valves: readonly MarkedValve[];
  readonly questions: readonly AssessedQuestion[];
  readonly stand?: MarksDetail['stand'];
}

/** Higher by the marks where the heights have it too high, or the other way round. */
function contrary({ valve: { height } }: MarkedValve, shim: number): boolean {
  if (Math.abs(shim) <= FINEST + EQUAL) return false;
  return height === (shim > 0 ? 'lower' : 'raise');
}

/**
 * The height that a stand comes to by its measures is set against what the marks ask for: both can’t be right, and neither
 * is told before somebody said which was read wrong.
 */
export function againstStand(valves: readonly MarkedValve[], evidence: Evidence): Against {
  const kept = lastKept(evidence, 'stand');
  const against = kept === undefined ? [] : valves.filter((each) => contrary(each, kept.set.shim));
  if (kept === undefined || against.length === 0) return { valves, questions: [] };
  const { shim } = kept.set;
  const ids = against.flatMap(({ valve }) => valve.marks.map(({ id }) => id)).toSorted();
  const question = asked(
    {
      code: 'stand-against-marks',
      weight: 'strong',
      ask: `By its heights the stand is ${inches(Math.abs(shim))} too ${shim < 0 ? 'high' : 'low'}, and the marks of ${listed(against.map(({ valve }) => placeOf(valve)))} ask for it to be ${shim < 0 ? 'raised' : 'lowered'}. Which was read wrong?`,
      knownBy: 'heights of the stand against its marks',
      size: 'A height, the shims under it, or where a mark sits: both ways can’t be right.',
      test: 'ask how pivot and tip height were taken, and which shims were under the stand for each mark.',
      byLooking: true,
      restsOn: ids,
    },
    {
      about: { of: 'build' },
      step: 'geometry',
      among: [...ids, kept.id ?? String(kept.line)].join('-'),
      answers: evidence.answers,
      choices: CHOICES,
    },
  );
  const chosen = chosenOf(question);
  const how = chosen === 'height' || chosen === 'mark' || chosen === 'neither' ? chosen : 'open';
  const told = how === 'height' ? undefined : { ...SAID[how], questionId: question.id };
  return {
    valves:
      told === undefined
        ? valves
        : valves.map((each) => {
            if (!against.includes(each)) return each;
            const { advice: _, ...valve } = each.valve;
            return { ...each, valve: { ...valve, first: told } };
          }),
    questions: [question],
    ...(how === 'mark' ? {} : { stand: { said: SAID[how].said } }),
  };
}
