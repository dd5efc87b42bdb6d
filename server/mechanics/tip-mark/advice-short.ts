import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Advice } from './advice-types.ts';
import { inchesSaid, lengthSaid } from './length-said.ts';
import { isCentred } from './next-length.ts';
import type { Mark, MarkContext } from './types.ts';

/** What follows from the marks of a valve, as it is said over the phone; `todo` where something is to be done. */
export interface ShortAdvice {
  readonly said: string;
  readonly todo: boolean;
}

const todo = (said: string): ShortAdvice => ({ said, todo: true });
const left = (said: string): ShortAdvice => ({ said, todo: false });

function changeSaid(
  { to, by, way, from, found }: Extract<Advice, { how: 'change' }>,
  context: MarkContext,
): string {
  const { mounting } = context;
  if (mounting !== 'stud')
    return `Next ${way === 'up' ? 'raise' : 'lower'} the ${mounting === 'shaft' ? 'stands' : 'pedestal'} by ${inchesSaid(by)}, and ink again.`;
  const what =
    to === undefined ? `${inchesSaid(by)} ${way === 'up' ? 'longer' : 'shorter'}` : lengthSaid(to, context);
  return from === 'place' && found === 'step'
    ? `On a stud the pushrod is too ${way === 'up' ? 'short' : 'long'}: try ${what}, and ink again.`
    : `Next try ${what}, and ink again.`;
}

function keepSaid(advice: Extract<Advice, { how: 'keep' }>, mark: Mark, context: MarkContext): string {
  const { mounting } = context;
  const at = advice.at ?? (mounting === 'stud' ? mark.pushrod : mark.shims);
  const narrowest =
    advice.best === true ? ': the mark is narrowest there, and the rest may be the ink line’s own width' : '';
  if (mounting !== 'stud')
    return at === undefined
      ? 'The height may stay.'
      : `It may stay at ${inchesSaid(at)} of shims${narrowest}.`;
  if (advice.offCentre === true)
    return `${at === undefined ? 'This' : lengthSaid(at, context)} is the length: its mark may stay off the middle, since the way there made it wider, and width goes first.`;
  if (mark.side !== 'centred' && isCentred(mark))
    return `Centred as far as it can be read: ${at === undefined ? 'the pushrod' : lengthSaid(at, context)} may stay.`;
  return at === undefined
    ? 'The pushrod may stay at this length.'
    : `${lengthSaid(at, context)} is the length${narrowest}.`;
}

function adviceSaid(advice: Advice, mark: Mark, context: MarkContext): ShortAdvice {
  const stud = context.mounting === 'stud';
  switch (advice.how) {
    case 'keep':
      return left(keepSaid(advice, mark, context));
    case 'width-first':
      return left(
        `${stud ? 'No length is told' : 'Nothing is told of the height'}: its width has no word yet, and width goes first.`,
      );
    case 'still-wide':
      return todo(
        `It is narrowest at ${stud ? lengthSaid(advice.at, context) : `${inchesSaid(advice.at)} of shims`}, and no ${stud ? 'length' : 'shim'} makes it ordinary: look at the heights, then read arm and lift again.`,
      );
    case 'change':
      return todo(changeSaid(advice, context));
    case 'both-ways':
      return todo(
        stud
          ? `${inSpoken('Try .050 longer and .050 shorter')}, and ink both.`
          : 'Change the height by one shim, and ink again.',
      );
    case 'contradict':
      if (advice.because === 'sides-swapped')
        return todo(
          'Each of these marks moved the other way: say first whether valley and exhaust side were swapped.',
        );
      return todo('These marks contradict each other: set each one again, and ink again.');
  }
}

/**
 * @param advice what all marks come to; undefined while the mounting is not known, or every mark is sideways
 * @param narrow the mark is narrower than this lift can sweep
 */
export function adviceInShort(
  advice: Advice | undefined,
  mark: Mark,
  context: MarkContext,
  narrow: boolean,
): ShortAdvice | undefined {
  if (mark.side === 'sideways')
    return todo(
      context.mounting === 'shaft'
        ? 'No length mends that: bring the rocker over the stem by the spacers on its shaft, and ink again.'
        : 'No length mends that: line up the guide plate or the stud, and ink again.',
    );
  if (narrow)
    return todo(
      `No ${context.follower === true ? 'follower' : 'roller'} sweeps so little at this lift: ink the whole tip, and do it again.`,
    );
  if (context.mounting === undefined)
    return todo('Say how the rockers are mounted: that decides what is changed.');
  return advice === undefined ? undefined : adviceSaid(advice, mark, context);
}
