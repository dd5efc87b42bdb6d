import { defined } from '../../../../../shared/defined.ts';
import { byText } from '../../../kit/by-text.ts';
import type { AssessedQuestion, Judgement, NextAction } from '../../assessment.ts';
import { upperFirst } from '../../common/said.ts';
import type { SheetDetail, SheetOddDetail } from '../rows/detail.ts';
import { ofBefore } from './of-before.ts';
import { ofCoarse } from './of-coarse.ts';
import { doubtsOf, lashFirst, ofDoubt, ofWhole, openDoubts } from './of-doubt.ts';
import { ofLobeUnlike } from './of-lobe-unlike.ts';
import { ofNoMiddle } from './of-no-middle.ts';
import { ofOdd } from './of-odd.ts';
import { ofLashIn, ofReading } from './of-reading.ts';
import { ofSprings } from './of-springs.ts';
import { ofSwap } from './of-swap.ts';
import type { Said } from './said.ts';

function actionOf(said: Said | undefined): NextAction | undefined {
  if (said === undefined) return undefined;
  const { action, about, sentence, reason, step = 'sheet', turns = true, at } = said;
  return {
    id: `next:sheet:${action}`,
    action,
    step,
    about,
    sentence: upperFirst(sentence),
    reason,
    turns,
    ...defined({ at }),
  };
}

const worstFirst = (a: SheetOddDetail, b: SheetOddDetail): number =>
  Math.abs(b.valveOff ?? b.lobeOff ?? 0) - Math.abs(a.valveOff ?? a.lobeOff ?? 0) ||
  byText(a.judgementId, b.judgementId);

export interface NextOfSheet {
  /** All valves of a side are off alike: that is settled before anything that one of them is asked. */
  readonly whole: NextAction | undefined;
  /** A swap that was begun is read to its end; then the odd valves that are clear, the worst first. */
  readonly clear: NextAction | undefined;
  /** What waits until every row is read: a valve within what repeats give, and doubts that nothing rests on. */
  readonly later: NextAction | undefined;
}

/**
 * What the sheet asks for next. An odd valve that is clear needs no more rows: it is followed before the rest is read.
 * Left out where nothing is odd, or all of it was done.
 */
export function nextOfSheet(
  { rows, sides, swaps }: SheetDetail,
  questions: readonly AssessedQuestion[],
  judgements: readonly Judgement[],
): NextOfSheet {
  const doubts = openDoubts(questions);
  const odd = sides.flatMap((side) => side.odd).toSorted(worstFirst);
  const ofValve = (each: SheetOddDetail): Said[] => {
    if (each.lash === true) return lashFirst(each, questions).map(ofDoubt);
    const todo = ofOdd(each, rows);
    return todo.length === 0 ? [] : [...doubtsOf(each, doubts), ...todo];
  };
  const isClear = ({ cause }: SheetOddDetail) => cause !== 'cannot-tell';
  const [first] = [
    ...swaps.flatMap(ofSwap),
    ...ofBefore(judgements),
    ...ofReading(questions),
    ...ofLashIn(judgements),
    ...ofCoarse(judgements),
    ...ofSprings(judgements),
    ...odd.filter(isClear).flatMap(ofValve),
  ];
  const [later] = [
    ...odd.filter((each) => !isClear(each)).flatMap(ofValve),
    ...ofNoMiddle(sides, rows),
    ...ofLobeUnlike(sides, rows),
    ...doubts.map(ofDoubt),
    ...ofWhole(questions),
  ];
  const [whole] = ofWhole(questions);
  return { whole: actionOf(whole), clear: actionOf(first), later: actionOf(later) };
}
