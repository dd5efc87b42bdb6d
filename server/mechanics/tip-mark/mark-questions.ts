import { EQUAL } from '../kit/nearest.ts';
import { adviceOf } from './advice.ts';
import { adviceSaid } from './advice-said.ts';
import { adviceInShort, narrowInShort, OVERHEAD, type ShortAdvice, sidewaysInShort } from './advice-short.ts';
import type { Advice } from './advice-types.ts';
import { isOver, narrowestLike, wideBy } from './called-wide.ts';
import { followerAdvice, followerInShort, followerQuestions } from './follower-mark.ts';
import { INK } from './least-width.ts';
import { lengthSaid, inchesSaid as said } from './length-said.ts';
import { PLACE_READ } from './next-length.ts';
import type { Mark, MarkAsked, MarkContext, MarkQuestion } from './types.ts';

function sidewaysQuestion({ side }: Mark, { mounting }: MarkContext): MarkQuestion[] {
  if (side !== 'sideways') return [];
  if (mounting === 'shaft')
    return [
      {
        asks: 'sideways',
        code: 'mark-sideways',
        ask: 'Do the spacers on the shaft, or the stands, hold the rocker square over the stem?',
        size: 'Out of line sideways: no pushrod length mends that.',
        test: 'move the rocker over the stem by the spacers on its shaft, and ink again.',
      },
    ];
  return [
    {
      asks: 'sideways',
      code: 'mark-sideways',
      ask: 'Do the guide plate and the stud bring the rocker square over the stem?',
      size: 'Out of line sideways: no pushrod length mends that.',
      test: 'loosen the plate, line the roller up on the stem, tighten, and ink again.',
    },
  ];
}

/** What width and place together are read to: nearer to the edge nobody can say on which side of it the mark ends. */
const EDGE_READ = Math.hypot(INK, PLACE_READ);

/** Of a mark whose place was told only by its side the width alone can run off the edge. */
function edgeQuestion({ width, off = 0 }: Mark, { stem }: MarkContext): MarkQuestion[] {
  const far = off + width / 2;
  if (stem === undefined || far + EDGE_READ <= stem / 2 + EQUAL) return [];
  if (far <= stem / 2 + EQUAL)
    return [
      {
        asks: 'close',
        code: 'mark-close-to-edge',
        ask: 'Does the mark run off the edge of the stem?',
        size: `Its far side is ${said(far)} from the middle, and the stem ends at ${said(stem / 2)}: ink and caliper are no better than what is left.`,
        test: 'look at that edge of the stem’s end, with nothing turned.',
      },
    ];
  return [
    {
      asks: 'edge',
      code: 'mark-at-the-edge',
      ask: 'Does the mark run off the edge of the stem?',
      size: `Its far side is ${said(off + width / 2)} from the middle; the stem ends at ${said(stem / 2)}.`,
      test: 'stop there. Look at the edge and at the guide; a qualified shop looks before it runs.',
    },
  ];
}

function narrowQuestion(
  { width }: Mark,
  { leastSweep, leastLow = leastSweep, follower }: MarkContext,
): MarkQuestion[] {
  if (leastSweep === undefined || leastLow === undefined || width >= leastLow - EQUAL) return [];
  return [
    {
      asks: 'narrow',
      code: 'mark-narrower-than-least',
      ask: 'Was the whole tip inked, and turned two whole turns?',
      size: `The mark is ${said(width)}; ${follower === true ? 'this follower' : 'a roller on this arm'} can’t sweep less than ${said(leastSweep)} at this lift.`,
      test: 'ink it again all over, two whole turns; and read arm and lift again.',
    },
  ];
}

/** All others that it may be compared with: of this valve at another setting, or of a neighbour. */
const othersOf = (marks: readonly Mark[], { beside }: MarkContext): readonly Mark[] => [
  ...marks.slice(0, -1),
  ...beside,
];

/** What it was compared with, and whether that calls it wide. */
function comparedSaid(mark: Mark, marks: readonly Mark[], context: MarkContext): string {
  const others = othersOf(marks, context);
  const narrowest = narrowestLike(mark, others);
  const by = wideBy(mark, others, context);
  if (by === 'band')
    return `It is over the ${said(context.ordinaryTo ?? 0)} that the trade counts as ordinary at the most.`;
  if (narrowest === undefined)
    return others.length === 0
      ? 'An ink mark holds the contact line’s own width as well, so one mark alone can’t be called wide.'
      : 'None beside it was made in the same way, so it can’t be called wide.';
  const beside = `The narrowest one beside it is ${said(narrowest)}`;
  if (by === 'beside') return `${beside}.`;
  return narrowest > mark.width + EQUAL
    ? `${beside}, wider than this one: it can’t be called wide by that.`
    : `${beside}, not narrower by more than ink is read to: it can’t be called wide.`;
}

/** How wide it is, and what it was compared with. */
function widthSaid(mark: Mark, marks: readonly Mark[], context: MarkContext): string {
  const { leastSweep = 0, overLeast } = context;
  return `${said(mark.width)}: over the least of ${said(leastSweep)} by ${said(mark.width - leastSweep)}, where ${said(overLeast)} is allowed. ${comparedSaid(mark, marks, context)}`;
}

function placeSaid({ side }: Mark, { mounting }: MarkContext): string {
  if (side !== 'valley' && side !== 'exhaust') return '';
  const toward = `Toward the ${side === 'valley' ? 'valley' : 'exhaust side'}`;
  if (mounting === 'stud')
    return `${toward}: on a stud the pushrod is too ${side === 'valley' ? 'short' : 'long'}.`;
  if (mounting === undefined) return `${toward}.`;
  return `${toward}. On a ${mounting} the height sets the geometry; the pushrod’s length sets the adjustment.`;
}

/** Asked while nobody said how the rockers are mounted. */
export const MOUNTING: Omit<MarkQuestion, 'size'> = {
  asks: 'mounting',
  code: 'mark-mounting',
  ask: 'How are the rockers mounted: on studs, pedestals or a shaft?',
  test: 'say the mounting. On studs the length moves the mark; on a shaft the height of the stands does.',
};

/** `called`: wide by the band or by one beside it, and not only over the ordinary. */
function asksOf(advice: Advice, mark: Mark, context: MarkContext, called: boolean): string {
  if (advice.how === 'contradict' && advice.because === 'sides-swapped')
    return 'Were valley and exhaust side swapped? Each longer pushrod carried the mark the other way.';
  if (advice.how === 'contradict')
    return 'Did anything else change between these marks, or was one read wrong?';
  if (advice.how === 'change' && context.mounting === 'stud') {
    const { to, by, way, found, from } = advice;
    const does = from === 'width' ? 'make the mark narrower' : 'bring the mark to the middle';
    const longer = `${said(by)} ${way === 'up' ? 'longer' : 'shorter'}`;
    if (to === undefined) return `Would a pushrod ${longer} ${does}?`;
    if (from === 'place' && found === 'line')
      return `Would ${lengthSaid(to, context)} ${does}? The marks so far point there.`;
    return `Would ${lengthSaid(to, context)} ${does}? That is ${longer}.`;
  }
  if (advice.how === 'still-wide') return 'Are the heights right for this lift: stud or stand, valve, arm?';
  const over = called ? 'wide' : 'over the ordinary';
  if (mark.side === 'centred' && isOver(mark, context))
    return `Centred, and ${called ? 'still wide' : over}: is the height right for this lift?`;
  return context.mounting === 'stud'
    ? `Is the mark ${over} because the length is off?`
    : `Is the height of the ${context.mounting === 'shaft' ? 'stands' : 'pedestal'} right?`;
}

/** What the place of this mark asks for is told only where it is what is to be done. */
function pointsAlike(advice: Advice, { side }: Mark): boolean {
  if (advice.how !== 'change' && advice.how !== 'both-ways' && advice.how !== 'contradict') return false;
  if (advice.how !== 'change') return true;
  return side === 'valley' ? advice.way === 'up' : advice.way === 'down';
}

const CONTRADICTED = {
  'moved-back': 'length-moves-nothing',
  'sides-swapped': 'marks-sides-swapped',
  'same-setting': 'marks-contradict',
  'no-one-least': 'marks-contradict',
} as const;

const ASKS: Readonly<Record<Exclude<Advice['how'], 'width-first'> | 'sides', MarkQuestion['asks']>> = {
  keep: 'compare',
  'still-wide': 'heights',
  change: 'try',
  'both-ways': 'try',
  contradict: 'contradict',
  sides: 'sides',
};

/** The one question that all marks of a valve come to: what to change, or that they contradict each other. */
function adviceQuestion(marks: readonly Mark[], mark: Mark, context: MarkContext): MarkQuestion[] {
  const wide = isOver(mark, context);
  const place = placeSaid(mark, context);
  if (context.mounting === undefined)
    return wide || place !== ''
      ? [
          {
            ...MOUNTING,
            size: place || widthSaid(mark, marks, context),
          },
        ]
      : [];
  const advice = adviceOf(marks, context);
  if (advice === undefined || advice.how === 'width-first') return [];
  if (advice.how === 'keep' && advice.best !== true) return [];
  const alone = narrowestLike(mark, othersOf(marks, context)) === undefined;
  const size = [
    ...(wide ? [widthSaid(mark, marks, context)] : []),
    ...(place === '' || !pointsAlike(advice, mark) ? [] : [place]),
  ].join(' ');
  const todo = adviceSaid(advice, mark, context);
  const first = wide && alone ? 'ink a neighbour in the same way and compare. Then ' : '';
  const code =
    advice.how === 'contradict' ? CONTRADICTED[advice.because] : wide ? 'mark-wide' : 'mark-off-centre';
  return [
    {
      asks: ASKS[advice.how === 'contradict' && advice.because === 'sides-swapped' ? 'sides' : advice.how],
      code,
      ask: asksOf(advice, mark, context, wideBy(mark, othersOf(marks, context), context) !== undefined),
      ...(size === '' ? {} : { size }),
      test: `${first}${todo}`,
    },
  ];
}

/**
 * What is asked of the marks of a valve, the one that is judged last: sideways first, then its width, then its place, as
 * the trade looks at them; a centred wide mark is still asked about, and what to change is one question for all marks.
 */
export function markQuestions(marks: readonly Mark[], context: MarkContext): MarkQuestion[] {
  const mark = marks.at(-1);
  if (mark === undefined) return [];
  const { follower, overhead } = context;
  return [
    ...edgeQuestion(mark, context),
    ...(follower === true || overhead === true ? [] : sidewaysQuestion(mark, context)),
    ...narrowQuestion(mark, context),
    ...(overhead === true
      ? []
      : follower === true
        ? followerQuestions(mark, context)
        : adviceQuestion(marks, mark, context)),
  ];
}

/** It is of the edge of the stem, which is asked of each mark by itself. */
export const isOfEdge = (asks: MarkAsked): boolean => asks === 'edge' || asks === 'close';

/** Which of the questions of a mark is gone by first; the edge has a stop of its own. */
const firstAsked = (marks: readonly Mark[], context: MarkContext): MarkAsked | undefined =>
  markQuestions(marks, context).find(({ asks }) => !isOfEdge(asks))?.asks;

/**
 * The same in one short sentence.
 *
 * @param asks the question that it is of; left out, that which is gone by first
 */
export function markInShort(
  marks: readonly Mark[],
  context: MarkContext,
  asks = firstAsked(marks, context),
): ShortAdvice | undefined {
  const mark = marks.at(-1);
  if (mark === undefined) return undefined;
  if (asks === 'narrow') return narrowInShort(context);
  if (context.overhead === true) return OVERHEAD;
  if (context.follower === true) return followerInShort(mark, context);
  if (asks === 'sideways') return sidewaysInShort(context);
  return adviceInShort(adviceOf(marks, context), mark, context);
}

/** What to do next about the marks of a valve, where their mounting is known and they say anything along the rocker. */
export function markAdvice(marks: readonly Mark[], context: MarkContext): string | undefined {
  const mark = marks.at(-1);
  if (mark !== undefined && context.follower === true) return followerAdvice(mark, context);
  const advice = context.overhead === true ? undefined : adviceOf(marks, context);
  return mark === undefined || advice === undefined ? undefined : adviceSaid(advice, mark, context);
}
