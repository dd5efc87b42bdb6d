import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface Seen {
  /** The stem's middle on the sheet, and its radius. */
  readonly x: number;
  readonly y: number;
  readonly r: number;
  /** Width of the mark and how far its middle is from the stem's, on the sheet; toward the exhaust side positive. */
  readonly width: number;
  readonly off: number;
  /** Out of line across the rocker: length cannot mend that. */
  readonly sideways?: boolean;
}

/** A stem's end seen from above, valley at the left and exhaust side at the right, with the mark across it. */
export function stemEnd({ x, y, r, width, off, sideways }: Seen): string {
  // What lies past the stem's edge has nothing to mark; the rest is cut off at the rim.
  const left = Math.max(-r, off - width / 2);
  const right = Math.min(r, off + width / 2);
  const rim = (across: number) => Math.sqrt(Math.max(0, r ** 2 - across ** 2));
  const steps = 8;
  const xs = Array.from({ length: steps + 1 }, (_, step) => left + ((right - left) * step) / steps);
  const top = (across: number) => (sideways ? Math.max(-rim(across), -r * 0.15) : -rim(across));
  const upper = xs.map((each) => `${at(x + each)} ${at(y + top(each))}`);
  const lower = xs.toReversed().map((each) => `${at(x + each)} ${at(y + rim(each))}`);
  const mark = right > left ? path('draw-moving draw-inked', `M${[...upper, ...lower].join('L')}Z`) : '';
  return (
    circle('draw-outline', x, y, r) +
    mark +
    path(
      'draw-centre',
      `M${at(x - r - 6)} ${at(y)}H${at(x + r + 6)}M${at(x)} ${at(y - r - 6)}V${at(y + r + 6)}`,
    )
  );
}

const KINDS = [
  { x: 56, y: 232, width: 9, off: 0, words: ['narrow,', 'centred'] },
  { x: 160, y: 232, width: 30, off: 0, words: ['wide: height', 'or length'] },
  { x: 264, y: 232, width: 9, off: -16, words: ['toward', 'the valley'] },
  { x: 56, y: 346, width: 9, off: 16, words: ['toward the', 'exhaust'] },
  { x: 160, y: 346, width: 9, off: 0, sideways: true, words: ['sideways: plate', 'or stud line'] },
] as const;

/** How a mark is made: it takes turning the engine. */
const HOW =
  label(212, 338, 'ink the tip,', { soft: true }) +
  label(212, 354, 'light spring,', { soft: true }) +
  label(212, 370, 'two turns', { soft: true });

/**
 * What a tip mark should look like, what else is seen, and the two sizes that are asked for; `inked` where nobody is to
 * be told how one is made.
 */
export function tipMarkAsked(id: string, { inked = false } = {}): Drawing {
  const big = { x: 160, y: 104, r: 62, width: 26, off: 18 };
  const right = big.x + big.off;
  return {
    id,
    title: 'The mark on the stem’s end, and its two sizes',
    desc: 'The stem’s end seen from above, valley at the left, exhaust side at the right. Measure the width of the mark along the rocker first, then how far the middle of the mark is from the stem’s middle, and to which side. As it should look it is narrow and centred. A wide mark speaks of height or length, one toward the valley or the exhaust side of length on a stud, one out of line sideways of the guide plate or the stud.',
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
      label(6, 108, 'valley', { soft: true }) +
      label(314, 108, 'exhaust', { soft: true, anchor: 'end' }) +
      KINDS.map(
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
      ).join('') +
      (inked ? '' : HOW),
    toScale: false,
    caption: 'First its width, then where its middle sits',
  };
}

export interface DrawnMark {
  /** `7.850`, `no length said`. */
  readonly name: string;
  /** Inches; toward the exhaust side positive. */
  readonly width: number;
  readonly off: number;
  readonly sideways: boolean;
  readonly where: string;
}

const COLUMNS = 3;
const RADIUS = 38;
const TALL = 138;

/** Marks side by side on the stem they were read on, to scale, in the order they are given. */
export function tipMarks(
  data: {
    readonly title: string;
    /** Inches; what the stem measures, or what it was taken for. */
    readonly stem: number;
    readonly stemKnown: boolean;
    readonly marks: readonly DrawnMark[];
    readonly least?: { readonly width: number; readonly most: number };
  },
  { id, ruler }: DrawnFor,
): Drawing {
  const { stem, marks, least } = data;
  const scale = (2 * RADIUS) / stem;
  const rows = Math.ceil(marks.length / COLUMNS);
  const ruled = 26 + rows * TALL;
  const across = Math.min(COLUMNS, marks.length);
  const place = (index: number) => ({
    x: (320 * ((index % COLUMNS) + 0.5)) / (rows > 1 ? COLUMNS : across),
    y: 58 + Math.floor(index / COLUMNS) * TALL,
  });
  const drawn = marks
    .map((mark, index) => {
      const { x, y } = place(index);
      return (
        stemEnd({
          x,
          y,
          r: RADIUS,
          width: mark.width * scale,
          off: mark.off * scale,
          sideways: mark.sideways,
        }) +
        label(x, y + 58, mark.name, { anchor: 'middle', className: 'draw-text-strong' }) +
        label(x, y + 74, `${ruler.figure(mark.width)} wide`, { anchor: 'middle' }) +
        label(x, y + 90, mark.where, { anchor: 'middle', soft: true })
      );
    })
    .join('');
  const ruler2 =
    least === undefined
      ? ''
      : levelDimension({
          y: ruled + 16,
          from: 24,
          to: 24 + least.width * scale,
          text: '',
          outline: ruled + 24,
        }) +
        label(24 + least.width * scale + 24, ruled + 20, `least sweep ${ruler.text(least.width)}`) +
        levelDimension({
          y: ruled + 40,
          from: 24,
          to: 24 + least.most * scale,
          text: '',
          outline: ruled + 48,
        }) +
        label(24 + least.most * scale + 24, ruled + 44, `look again over ${ruler.text(least.most)}`);
  const told = marks.map((mark) => `${mark.name}: ${ruler.text(mark.width)} wide, ${mark.where}`).join('; ');
  return {
    id,
    title: data.title,
    desc: `The stem’s end seen from above, valley at the left, exhaust side at the right. ${told}.${least === undefined ? '' : ` The least sweep of this lift on this arm is ${ruler.text(least.width)}; over ${ruler.text(least.most)} the mark is looked at again.`}`,
    viewBox: `0 0 320 ${ruled + (least === undefined ? 0 : 56)}`,
    svg:
      label(4, 14, 'valley', { soft: true }) +
      label(316, 14, 'exhaust', { soft: true, anchor: 'end' }) +
      drawn +
      ruler2,
    toScale: data.stemKnown,
    caption: data.stemKnown
      ? data.title
      : `${data.title}; the stem’s size was not said and is drawn as ${ruler.text(stem)}`,
    table: {
      caption: data.title,
      columns: [{ label: 'Pushrod' }, { label: 'Width', number: true }, { label: 'Where' }],
      rows: marks.map((mark) => ({ cells: [mark.name, ruler.text(mark.width), mark.where] })),
    },
  };
}
