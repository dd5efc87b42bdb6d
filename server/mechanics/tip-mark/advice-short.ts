import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Advice } from './advice-types.ts';
import { inchesSaid, lengthSaid } from './length-said.ts';
import { isCentred, ONE_LENGTH } from './next-length.ts';
import type { Mark, MarkContext } from './types.ts';

/** What follows from the marks of a valve, as it is said over the phone. */
export interface ShortAdvice {
  readonly said: string;
  /** Something is to be done. */
  readonly todo: boolean;
  /** The engine is turned for it. */
  readonly turns: boolean;
}

/** It is inked, read or set: the engine is turned for it. */
export const toTurn = (said: string): ShortAdvice => ({ said, todo: true, turns: true });
/** It is said, looked at or entered, with nothing turned. */
export const toSay = (said: string): ShortAdvice => ({ said, todo: true, turns: false });
/** Nothing is to be done. */
export const asItIs = (said: string): ShortAdvice => ({ said, todo: false, turns: false });

/** On a pedestal or shaft another height is another length of pushrod. */
const ROD_AGAIN = 'Measure the pushrod’s length again at that height.';

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
      : `It may stay at ${inchesSaid(at)} of shims${narrowest}.${at > ONE_LENGTH ? ` ${ROD_AGAIN}` : ''}`;
  // What the checker stands at is not what is ordered, where an adjustment is in that.
  const length = context.adjusted === true ? 'the checker’s length' : 'the length';
  if (advice.offCentre === true)
    return `${at === undefined ? 'This' : lengthSaid(at, context)} is ${length}: its mark may stay off the middle, since the way there made it wider, and width goes first.`;
  if (mark.side !== 'centred' && isCentred(mark))
    return `Centred as far as it can be read: ${at === undefined ? 'the pushrod' : lengthSaid(at, context)} may stay.`;
  return at === undefined
    ? 'The pushrod may stay at this length.'
    : `${lengthSaid(at, context)} is ${length}${narrowest}.`;
}

function adviceSaid(advice: Advice, mark: Mark, context: MarkContext): ShortAdvice {
  const stud = context.mounting === 'stud';
  switch (advice.how) {
    case 'keep':
      return asItIs(keepSaid(advice, mark, context));
    case 'width-first':
      return asItIs(
        `${stud ? 'No length is told' : 'Nothing is told of the height'}: its width has no word yet, and width goes first.`,
      );
    case 'still-wide':
      return toTurn(
        `It is narrowest at ${stud ? lengthSaid(advice.at, context) : `${inchesSaid(advice.at)} of shims`}, and no ${stud ? 'length' : 'shim'} makes it ordinary: look at the heights, then read arm and lift again.`,
      );
    case 'change':
      return toTurn(changeSaid(advice, context));
    case 'both-ways':
      return toTurn(
        stud
          ? `${inSpoken('Try .050 in longer and .050 in shorter')}, and ink both.`
          : 'Change the height by one shim, and ink again.',
      );
    case 'contradict':
      if (advice.because === 'sides-swapped')
        return toSay(
          'Each of these marks moved the other way: say first whether valley and exhaust side were swapped.',
        );
      return toTurn('These marks contradict each other: set each one again, and ink again.');
  }
}

/** Of a mark that is out of line across the rocker. */
export const sidewaysInShort = ({ mounting }: MarkContext): ShortAdvice =>
  toTurn(
    mounting === 'shaft'
      ? 'No length mends that: bring the rocker over the stem by the spacers on its shaft, and ink again.'
      : 'No length mends that: line up the guide plate or the stud, and ink again.',
  );

/** Of a mark that is narrower than this lift can sweep. */
export const narrowInShort = ({ follower, overhead }: MarkContext): ShortAdvice =>
  toTurn(
    `No ${follower === true ? 'follower' : overhead === true ? 'rocker' : 'roller'} sweeps so little at this lift: ink the whole tip, and do it again.`,
  );

/** Of a rocker on an overhead cam nothing is told that would move its mark. */
export const OVERHEAD: ShortAdvice = asItIs(
  'What moves it on an overhead cam is not worked out: the pivot sets the contact on the cam and the lash as well.',
);

/**
 * @param advice what all marks come to; undefined while the mounting is not known, or every mark is sideways
 */
export function adviceInShort(
  advice: Advice | undefined,
  mark: Mark,
  context: MarkContext,
): ShortAdvice | undefined {
  if (context.mounting === undefined)
    return toSay('Say how the rockers are mounted: that decides what is changed.');
  return advice === undefined ? undefined : adviceSaid(advice, mark, context);
}
