import type { CallContext } from '../../call/context.ts';
import { isStopped } from '../../call/under-stop.ts';
import { NO_ROWS, type WorksheetRows } from '../../call/worksheet-rows.ts';
import { titleOf, worstFirst } from './judged.ts';

/** A line for each gap of the valve that is told first that only a measurement settles. */
export function gapRows(context: CallContext): WorksheetRows {
  const [worst] = isStopped(context) ? [] : worstFirst(context.assessment);
  if (worst === undefined) return NO_ROWS;
  const open = worst.gaps.filter(({ measure, word, after }) => {
    const isMeasured = after?.basis === 'measured';
    return !isMeasured && (measure || word === 'close' || word === 'short');
  });
  return {
    ...NO_ROWS,
    blanks: open.map(({ title }) => `${title}, ${titleOf(worst, context.assessment)}`),
  };
}
