import { expect, test } from 'vitest';
import { adviceOf } from '../../../server/mechanics/tip-mark/advice.ts';
import type { Mark, MarkContext } from '../../../server/mechanics/tip-mark/types.ts';

const IN = 0.0254;
const mark = (pushrod: number, width: number): Mark => ({
  width: width * IN,
  side: 'centred',
  off: 0,
  pushrod: pushrod * IN,
});
const context: MarkContext = { leastSweep: 0.0211 * IN, overLeast: 0.02 * IN, mounting: 'stud', beside: [] };

/*
 * By hand: .060, .050 and .070 at 7.80, 7.85 and 7.90 are least at 7.8417, narrower than at 7.85 by .0004 in: ink is read
 * to .005. Ink as common practice has it, no published source.
 */
test('a length that makes the mark narrower by less than ink is read to is not tried', () => {
  const marks = [mark(7.9, 0.07), mark(7.8, 0.06), mark(7.85, 0.05)];
  expect(adviceOf(marks, context)).toMatchObject({ how: 'keep', at: 7.85 * IN });
});
