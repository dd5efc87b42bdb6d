import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Advice } from './advice-types.ts';
import { inchesSaid, lengthSaid } from './length-said.ts';
import { pivotErrorOf } from './pivot-error.ts';
import type { Mark, MarkContext, Mounting } from './types.ts';

const AGAIN = 'same ink, light spring, two turns by hand; send width and place.';

/** On a pedestal or shaft another height is another length of pushrod: whatever was measured before is of the old one. */
const ROD_AGAIN = 'Once the height stays, measure the pushrod’s length again: it goes by the height.';

const CONTRADICTS = {
  'same-setting': 'two marks made at one setting are more than .020 in apart',
  'moved-back':
    'a longer pushrod should carry the mark toward the exhaust side, and here it went the other way',
  'no-one-least': 'the widths go up and down and up again instead of to one least',
} as const;

const STANDS: Readonly<Record<Mounting, string>> = { stud: 'pushrod', pedestal: 'pedestal', shaft: 'stands' };

const WHY_BY_WIDTH = {
  step: 'The marks get narrower that way',
  line: 'The marks get narrower that way',
  least: 'The widths are least there',
  'other-way': 'The other way was inked, and is as wide',
} as const;

function changeSaid(
  advice: Extract<Advice, { how: 'change' }>,
  mounting: Mounting,
  context: MarkContext,
): { readonly todo: string; readonly because: string } {
  const { way, by, to, found, from, placeAgainst } = advice;
  const stud = mounting === 'stud';
  const verb = stud ? (way === 'up' ? 'lengthen' : 'shorten') : way === 'up' ? 'raise' : 'lower';
  const target =
    to === undefined
      ? ''
      : stud
        ? `, to ${lengthSaid(to, context)}`
        : to < 0
          ? ''
          : `, to ${inchesSaid(to)} of shims${found === 'least' ? ' or as near as shims come' : ''}`;
  const why =
    from === 'place'
      ? found === 'line'
        ? 'The places of these marks point there'
        : `Toward the ${way === 'up' ? 'valley it wants to be longer' : 'exhaust side it wants to be shorter'}, on a stud`
      : WHY_BY_WIDTH[found];
  return {
    todo: `${verb} the ${STANDS[mounting]} by ${inchesSaid(by)}${target}`,
    because: `${why}${placeAgainst ? '; its place asks for the other way, and width goes first' : ''}.`,
  };
}

/** What sets the height where the setting alone does not mend the width. */
const LOOK_AT: Readonly<Record<Mounting, string>> = {
  stud: 'Look at the heights: the stud and its nut, the valve’s length, a cap; and read arm and lift again.',
  pedestal: 'Look at the pedestal’s place and the valve’s length, and read arm and lift again.',
  shaft: 'Look at the stands’ place and the valve’s length, and read arm and lift again.',
};

function keepSaid(mounting: Mounting, at: number | undefined, context: MarkContext): string {
  if (mounting === 'stud')
    return at === undefined
      ? 'leave the pushrod at this length'
      : `leave the pushrod at ${lengthSaid(at, context)}`;
  return at === undefined
    ? 'leave the height where it is'
    : `leave the ${STANDS[mounting]} at ${inchesSaid(at)} of shims`;
}

/** The most that the height can be off, told as what is changed; nothing where arm or lift are not known. */
function mostSaid(mark: Mark, { arm, lift, ratio, mounting }: MarkContext): string {
  const error = arm === undefined || lift === undefined ? undefined : pivotErrorOf(arm, lift, mark.width);
  if (error === undefined) return '';
  // On a stud the tip stands still: the cup, and with it the pushrod, goes further than the pivot.
  const length = mounting === 'stud' ? (ratio === undefined ? undefined : error * (1 + 1 / ratio)) : error;
  return length === undefined || length <= 0
    ? ''
    : ` By its width alone ${mounting === 'stud' ? 'the pushrod' : 'the height'} is at most ${inchesSaid(length)} off, whichever way: the contact line’s own width is in it.`;
}

/** What to do next about the marks of a valve, in one sentence or two; all of its marks are in it. */
export function adviceSaid(advice: Advice, judged: Mark, context: MarkContext): string {
  const { mounting = 'stud' } = context;
  switch (advice.how) {
    case 'keep':
      if (advice.best === true)
        return `${keepSaid(mounting, advice.at, context)}: the mark is narrowest there. What is over the ordinary may be the ink line’s own width; ink a neighbour to compare.`;
      if (advice.offCentre === true)
        return `${keepSaid(mounting, judged.pushrod, context)}: its mark may stay off the middle, since the way there made it wider, and width goes first.`;
      return mounting === 'stud'
        ? `${keepSaid(mounting, advice.at ?? judged.pushrod, context)}.`
        : `leave the height where it stands.${judged.side === 'centred' ? '' : ' On a shaft or pedestal where the mark sits says where the pivot stands along the head, not how high.'}`;
    case 'width-first':
      return `its width goes first, and has no word yet: pivot to tip and lift give the least sweep. Until then no ${mounting === 'stud' ? 'length' : 'height'} is told.`;
    case 'change': {
      const { todo, because } = changeSaid(advice, mounting, context);
      return `${todo}. ${because} Then ink again: ${AGAIN}${mounting === 'stud' ? '' : ` ${ROD_AGAIN}`}`;
    }
    case 'still-wide':
      return `${keepSaid(mounting, advice.at, context)}: no ${mounting === 'stud' ? 'length' : 'shim'} makes it ordinary, the least is ${inchesSaid(advice.width)}. ${LOOK_AT[mounting]} Ink a neighbour as well, to compare.`;
    case 'both-ways':
      return mounting === 'stud'
        ? `${inSpoken('try .050 in longer and .050 in shorter')}, ink both, and keep the narrowest of the three even where it is off centre.${mostSaid(judged, context)}`
        : `change the height of the ${STANDS[mounting]} by one shim and ink again, with the shims told; the narrower one is the way to go.${mostSaid(judged, context)}`;
    case 'contradict':
      if (advice.because === 'sides-swapped')
        return `say which side of the stem was called valley: it is the side of the pushrod. A longer pushrod should carry the mark toward the exhaust side, and each of these went the other way; with the sides the other way round they fit. Put the sides right, or say that they are so.`;
      return `these marks contradict each other: ${inSpoken(CONTRADICTS[advice.because])}. Set each one again with a caliper and read again: ${AGAIN}`;
  }
}
