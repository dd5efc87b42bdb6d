import { asItIs, type ShortAdvice, toTurn } from './advice-short.ts';
import { isOver } from './called-wide.ts';
import { inchesSaid as said } from './length-said.ts';
import type { Mark, MarkContext, MarkQuestion } from './types.ts';

/*
 * A finger follower has no pushrod, stud or stand: it lies on its pivot and on the valve's tip, with the cam above it. The
 * heights of the two carry the mark, and both are the part maker's (common practice, no published source).
 */

const HEIGHTS =
  'compare the height of its pivot and of the valve’s tip with the part maker’s figures and with the followers beside it; then ink again.';
const SQUARE = 'look whether it lies square on its pivot and over the stem, and ink again.';

/** What is asked of the mark of a follower, beside whether it was inked whole and runs off the edge. */
export function followerQuestions(mark: Mark, context: MarkContext): MarkQuestion[] {
  if (mark.side === 'sideways')
    return [
      {
        asks: 'sideways',
        code: 'mark-sideways',
        ask: 'Does the follower lie square on its pivot and over the stem?',
        size: 'Out of line sideways: no height mends that.',
        test: SQUARE,
      },
    ];
  const wide = isOver(mark, context);
  if (!wide && mark.side === 'centred') return [];
  const { leastSweep = 0, overLeast } = context;
  return [
    {
      asks: 'pivot',
      code: wide ? 'mark-wide' : 'mark-off-centre',
      ask: 'Do pivot and valve tip stand at the heights that the follower is made for?',
      size: wide
        ? `${said(mark.width)}: over the least of ${said(leastSweep)} by ${said(mark.width - leastSweep)}, where ${said(overLeast)} is allowed.`
        : `${mark.side === 'valley' ? 'Toward' : 'Away from'} the pivot: no length is set on a follower; the heights of pivot and valve put the mark where it is.`,
      test: HEIGHTS,
    },
  ];
}

/** The same in one short sentence. */
export function followerInShort(mark: Mark, context: MarkContext): ShortAdvice {
  if (mark.side === 'sideways') return toTurn(`No height mends that: ${SQUARE}`);
  return followerQuestions(mark, context).length === 0
    ? asItIs('The heights of pivot and valve tip may stay.')
    : toTurn(`Nothing is set by a length: ${HEIGHTS}`);
}

/** What to do next about it. */
export const followerAdvice = (mark: Mark, context: MarkContext): string =>
  followerQuestions(mark, context)[0]?.test ?? 'leave the heights of pivot and valve tip as they are.';
