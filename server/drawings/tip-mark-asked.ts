import { levelDimension } from './dimension.ts';
import type { Drawing } from './drawing.ts';
import { label } from './svg.ts';
import { ENDS, SEEN, type SeenMark, stemEnd } from './tip-mark.ts';

interface Kind extends Omit<SeenMark, 'r'> {
  readonly words: readonly [string, string];
}

const KINDS: readonly Kind[] = [
  { x: 56, y: 232, width: 9, off: 0, words: ['narrow,', 'centred'] },
  { x: 160, y: 232, width: 30, off: 0, words: ['wide: height', 'or length'] },
  { x: 264, y: 232, width: 9, off: -16, words: ['toward', 'the valley'] },
  { x: 56, y: 346, width: 9, off: 16, words: ['toward the', 'exhaust'] },
  { x: 160, y: 346, width: 9, off: 0, sideways: true, words: ['sideways: plate', 'or stud line'] },
];

/** On a follower nothing is set by a length: what is seen is the same, what it speaks of is not. */
const OF_FOLLOWER: readonly Kind['words'][] = [
  ['narrow,', 'centred'],
  ['wide: a height', 'is off'],
  ['toward', 'the pivot'],
  ['away from', 'the pivot'],
  ['sideways: not', 'square on it'],
];

const SPEAKS = {
  rocker:
    'A wide mark speaks of height or length, one toward the valley or the exhaust side of length on a stud, one out of line sideways of the guide plate or the stud.',
  follower:
    'A wide mark, or one toward the pivot or away from it, speaks of the heights of pivot and valve tip, one out of line sideways of how the follower lies.',
} as const;

/** How a mark is made: it takes turning the engine. */
const HOW =
  label(212, 338, 'ink the tip,', { soft: true }) +
  label(212, 354, 'light spring,', { soft: true }) +
  label(212, 370, 'two turns', { soft: true });

/**
 * What a tip mark should look like, what else is seen, and the two sizes that are asked for; `inked` where nobody is to
 * be told how one is made.
 */
export function tipMarkAsked(id: string, { inked = false, follower = false } = {}): Drawing {
  const gear = follower ? 'follower' : 'rocker';
  const kinds = KINDS.map((kind, index) => ({
    ...kind,
    words: (follower ? OF_FOLLOWER[index] : undefined) ?? kind.words,
  }));
  const big = { x: 160, y: 104, r: 62, width: 26, off: 18 };
  const right = big.x + big.off;
  return {
    id,
    title: 'The mark on the stem’s end, and its two sizes',
    desc: `The stem’s end seen from above, ${SEEN[gear]}. Measure the width of the mark along the ${gear} first, then how far the middle of the mark is from the stem’s middle, and to which side. As it should look it is narrow and centred. ${SPEAKS[gear]}`,
    viewBox: '0 0 320 424',
    svg:
      stemEnd(big) +
      levelDimension({
        y: 26,
        from: right - big.width / 2,
        to: right + big.width / 2,
        text: '1 width',
        outline: big.y - big.r + 4,
      }) +
      levelDimension({ y: 182, from: big.x, to: right, text: '', outline: big.y + big.r + 4 }) +
      label(right + 24, 186, '2 its middle') +
      label(6, 108, ENDS[gear][0], { soft: true }) +
      label(314, 108, ENDS[gear][1], { soft: true, anchor: 'end' }) +
      kinds
        .map(
          (kind) =>
            stemEnd({ ...kind, r: 30 }) +
            kind.words
              .map((text, line) =>
                label(kind.x, kind.y + 48 + line * 16, text, {
                  anchor: 'middle',
                  ...(kind.words[0] === 'narrow,' ? { className: 'draw-text-strong' } : {}),
                }),
              )
              .join(''),
        )
        .join('') +
      (inked ? '' : HOW),
    toScale: false,
    caption: 'First its width, then where its middle sits',
  };
}
