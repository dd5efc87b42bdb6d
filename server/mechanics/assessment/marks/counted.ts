import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { byId } from '../common/said.ts';
import { enteredAt, isSince } from '../common/since.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { type AskedOfMark, answerOf } from './answers.ts';
import { settled } from './apart.ts';
import { isOneSetting } from './one-setting.ts';

const OTHER = { valley: 'exhaust', exhaust: 'valley', centred: 'centred', sideways: 'sideways' } as const;

/** The marks of a valve that count, after what was answered of them. */
export interface Counted {
  readonly kept: readonly TipMarkEvidence[];
  /** Which of two on opposite sides holds, and whether the sides were swapped. */
  readonly questions: readonly AssessedQuestion[];
  /** Which of two on opposite sides holds; `open`: nobody has said yet. */
  readonly apart?: { readonly question: AssessedQuestion; readonly open: boolean };
}

type Ask = (marks: readonly TipMarkEvidence[]) => readonly AskedOfMark[];

/** Whether a mark was inked after it was answered; one that was put right after it was inked before. */
const isInkedSince = (
  mark: TipMarkEvidence,
  { answered }: AssessedQuestion,
  { answers }: Evidence,
): boolean => {
  const said = answers.find(({ id }) => id === answered?.entryId);
  return said !== undefined && isSince(mark, said);
};

/** Marks of which an answer said that they count no more once it is inked again, and it was. */
function renewed(
  evidence: Evidence,
  kept: readonly TipMarkEvidence[],
  since: TipMarkEvidence,
  misread: Set<string>,
  ask: Ask,
): Set<string> {
  const answered = ask(kept).filter(({ question }) => isInkedSince(since, question, evidence));
  const restingOn = (how: true | 'its-setting') =>
    answered.filter((each) => answerOf(each)?.renews === how).flatMap(({ question }) => question.restsOn);
  for (const id of restingOn('its-setting')) misread.add(id);
  const again = kept.filter((mark) => misread.has(mark.id) && isOneSetting(mark, since));
  return new Set([...restingOn(true), ...again.map(({ id }) => id)]);
}

/**
 * One mark after the other, as they came on record: each answer is of the marks that were there when it was given, and
 * stays said whatever is inked later.
 */
export function counted(own: readonly TipMarkEvidence[], evidence: Evidence, ask: Ask): Counted {
  let kept: readonly TipMarkEvidence[] = [];
  let apart: { readonly question: AssessedQuestion; readonly open: boolean } | undefined;
  let swapped: AssessedQuestion | undefined;
  // One of these was read wrong: each stays said so when its neighbour has been inked again.
  const misread = new Set<string>();
  for (const mark of own.toSorted((a, b) => enteredAt(a) - enteredAt(b) || byId(a, b))) {
    const gone = renewed(evidence, kept, mark, misread, ask);
    const {
      question,
      open,
      kept: left,
    } = settled([...kept.filter(({ id }) => !gone.has(id)), mark], evidence);
    if (question !== undefined) apart = { question, open };
    else if (apart?.open === true) apart = undefined;
    kept = left;
    const sides = ask(kept).find(({ asks }) => asks === 'sides');
    if (sides !== undefined && answerOf(sides)?.code === 'swapped') {
      swapped = sides.question;
      kept = kept.map((each) => ({ ...each, side: OTHER[each.side] }));
    }
  }
  return {
    kept,
    questions: [
      ...(apart === undefined ? [] : [apart.question]),
      ...(swapped === undefined ? [] : [swapped]),
    ],
    ...defined({ apart }),
  };
}
