import { ONE_LENGTH } from '../../tip-mark/next-length.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { byId } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { type AskedOfMark, answerOf } from './answers.ts';
import { settled } from './apart.ts';

const OTHER = { valley: 'exhaust', exhaust: 'valley', centred: 'centred', sideways: 'sideways' } as const;

/** The marks of a valve that count, after what was answered of them. */
export interface Counted {
  readonly kept: readonly TipMarkEvidence[];
  /** Which of two on opposite sides holds, and whether the sides were swapped. */
  readonly questions: readonly AssessedQuestion[];
  /** Nobody has said yet which holds. */
  readonly open: boolean;
}

type Ask = (marks: readonly TipMarkEvidence[]) => readonly AskedOfMark[];

const lineOf = ({ answers }: Evidence, { answered }: AssessedQuestion): number =>
  answers.find(({ id }) => id === answered?.entryId)?.line ?? Number.POSITIVE_INFINITY;

/** Marks of which an answer said that they count no more once it is inked again, and it was. */
function renewed(
  evidence: Evidence,
  kept: readonly TipMarkEvidence[],
  since: TipMarkEvidence,
  misread: Set<string>,
  ask: Ask,
): Set<string> {
  const answered = ask(kept).filter((each) => lineOf(evidence, each.question) < since.line);
  const restingOn = (how: true | 'its-setting') =>
    answered.filter((each) => answerOf(each)?.renews === how).flatMap(({ question }) => question.restsOn);
  for (const id of restingOn('its-setting')) misread.add(id);
  const again = kept.filter((mark) => misread.has(mark.id) && isOneSetting(mark, since));
  return new Set([...restingOn(true), ...again.map(({ id }) => id)]);
}

const isAt = (a: number | undefined, b: number | undefined): boolean =>
  a === undefined || b === undefined ? a === b : Math.abs(a - b) < ONE_LENGTH;

const isOneSetting = (a: TipMarkEvidence, b: TipMarkEvidence): boolean =>
  isAt(a.pushrod, b.pushrod) && isAt(a.shims, b.shims);

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
  for (const mark of own.toSorted((a, b) => a.line - b.line || byId(a, b))) {
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
    open: apart?.open === true,
  };
}
