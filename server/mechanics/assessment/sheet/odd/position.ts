import { defined } from '../../../../../shared/defined.ts';
import type { AnswerChoice, AssessedQuestion, Subject } from '../../assessment.ts';
import { asked, type Doubt } from '../../common/asked.ts';
import { chosenOf } from '../../common/chosen.ts';
import { listed, valveSubject } from '../../common/said.ts';
import type { AnswerEvidence } from '../../evidence.ts';
import type { SheetSwapDetail } from '../rows/detail.ts';

/*
 * What a position is made of, in the order that moves least: the pushrods of the two valves change places, then tip and
 * stud height are looked at. Common practice, no published source. What is seen is answered, not entered as readings:
 * with another pushrod they are no readings of the valve.
 */

const choice = (code: string, label: string, changes: string): AnswerChoice => ({ code, label, changes });

const PUSHROD = [
  choice(
    'goes',
    'It goes with the pushrod',
    'It is the pushrod: its length is read against its neighbours’.',
  ),
  choice('stays', 'It stays on the valve', 'Tip and stud height are looked at.'),
];
const HEIGHT = [
  choice('differs', 'One of them differs', 'That height is put right before the part is judged.'),
  choice('alike', 'Both are like their neighbours', 'Lifter and set-up are left.'),
];

/** The swap of the pushrods, as something to do. */
export const pushrodsSwapped = (places: readonly string[]): string =>
  `Swap the pushrods of ${listed(places)}, leave the arms where they are, and read both valves the same way. Say what was seen; the readings are not entered.`;

/** What is looked at once the pushrods have told nothing. */
export const heightsLooked = (place: string): string =>
  `With nothing turned, lay a straightedge over the valve tips beside ${place}, then over the studs or their bosses.`;

const pushrod = ({ places }: SheetSwapDetail, place: string): Doubt => ({
  code: 'pushrod-or-valve',
  weight: 'weak',
  ask: `With its pushrod swapped, does what is odd on ${place} go with the pushrod?`,
  test: pushrodsSwapped(places),
  restsOn: [],
});

const height = (place: string): Doubt => ({
  code: 'tip-or-stud-height',
  weight: 'weak',
  ask: `Is the tip or the stud of ${place} at another height than those beside it?`,
  test: heightsLooked(place),
  byLooking: true,
  restsOn: [],
});

interface Looked {
  readonly swap: SheetSwapDetail;
  readonly questions: readonly AssessedQuestion[];
}

/** What is asked of a swap that tells of a position, and what was answered. */
function look(swap: SheetSwapDetail, answers: readonly AnswerEvidence[]): Looked {
  const { verdict, oddPlace, oddAt, restsOn } = swap;
  if (oddAt === undefined || oddPlace === undefined || (verdict !== 'position' && verdict !== 'both'))
    return { swap, questions: [] };
  const about: Subject = valveSubject(oddAt);
  const put = (doubt: Doubt, choices: AssessedQuestion['answers']) =>
    asked({ ...doubt, restsOn }, { about, step: 'sheet', among: swap.spring, answers, choices });
  const first = put(pushrod(swap, oddPlace), PUSHROD);
  const goes = chosenOf(first);
  if (goes !== 'stays')
    return { swap: { ...swap, ...(goes === 'goes' ? { pushrod: goes } : {}) }, questions: [first] };
  const second = put(height(oddPlace), HEIGHT);
  const found = chosenOf(second);
  const heights: SheetSwapDetail['heights'] = found === 'differs' || found === 'alike' ? found : undefined;
  return {
    swap: { ...swap, pushrod: 'stays', ...defined({ heights }) },
    questions: [first, second],
  };
}

/** The swaps with what was seen since, and what is asked to tell the parts of a position from one another. */
export function positionsOf(
  swaps: readonly SheetSwapDetail[],
  answers: readonly AnswerEvidence[],
): { readonly swaps: readonly SheetSwapDetail[]; readonly questions: readonly AssessedQuestion[] } {
  const looked = swaps.map((swap) => look(swap, answers));
  const questions = new Map(looked.flatMap((each) => each.questions).map((each) => [each.id, each]));
  return { swaps: looked.map(({ swap }) => swap), questions: [...questions.values()] };
}
