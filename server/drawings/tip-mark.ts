import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

/** A stem’s end on the sheet, with the mark on it. */
export interface SeenMark {
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
export function stemEnd({ x, y, r, width, off, sideways }: SeenMark): string {
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

/** What lies at either end of the rocker, or of the follower. */
export const ENDS = { rocker: ['valley', 'exhaust'], follower: ['pivot', 'away'] } as const;
/** From where the stem’s end is seen. */
export const SEEN = {
  rocker: 'valley at the left, exhaust side at the right',
  follower: 'the follower’s pivot at the left',
} as const;

export interface DrawnMark {
  /** `7.850`, `no length said`. */
  readonly name: string;
  /** Inches; toward the exhaust side positive. */
  readonly width: number;
  readonly off: number;
  readonly sideways: boolean;
  readonly where: string;
  /** To which side its middle sits was said, and not how far: `off` says the side alone. */
  readonly farUnknown?: boolean;
}

const COLUMNS = 3;
const RADIUS = 38;
const TALL = 138;
const LINE = 16;

/** Under a mark that is drawn off to its side because nobody measured how far. */
const FAR_UNKNOWN = ['how far:', 'not measured'] as const;
/** Halfway to the rim: plainly not centred, and plainly of that side. */
const OFF_UNMEASURED = RADIUS / 2;

const rowTall = (marks: readonly DrawnMark[]): number =>
  marks.some(({ farUnknown }) => farUnknown === true) ? TALL + FAR_UNKNOWN.length * LINE : TALL;

/** Where it is, in one line. */
const whereSaid = ({ where, farUnknown }: DrawnMark): string =>
  farUnknown === true ? `${where}, ${FAR_UNKNOWN.join(' ')}` : where;

interface TipMarks {
  readonly title: string;
  /** Of a follower: its pivot at the left, and no pushrod to tell the marks by. */
  readonly follower?: boolean;
  /** Inches; what the stem measures, or what it was taken for. */
  readonly stem: number;
  readonly stemKnown: boolean;
  readonly marks: readonly DrawnMark[];
  readonly least?: { readonly width: number; readonly most: number };
}

type Ruler = DrawnFor['ruler'];

/** Marks in rows of three, each on its stem’s end with its name, width and place under it. */
function marksDrawn(marks: readonly DrawnMark[], scale: number, ruler: Ruler): string {
  const rows = Math.ceil(marks.length / COLUMNS);
  const across = rows > 1 ? COLUMNS : Math.min(COLUMNS, marks.length);
  const tall = rowTall(marks);
  return marks
    .map(({ name, width, off, sideways, where, farUnknown = false }, index) => {
      const x = (320 * ((index % COLUMNS) + 0.5)) / across;
      const y = 58 + Math.floor(index / COLUMNS) * tall;
      const middle = farUnknown ? Math.sign(off) * OFF_UNMEASURED : off * scale;
      return (
        stemEnd({ x, y, r: RADIUS, width: width * scale, off: middle, sideways }) +
        label(x, y + 58, name, { anchor: 'middle', className: 'draw-text-strong' }) +
        label(x, y + 74, `${ruler.figure(width)} wide`, { anchor: 'middle' }) +
        label(x, y + 90, where, { anchor: 'middle', soft: true }) +
        (farUnknown ? FAR_UNKNOWN : [])
          .map((text, index) => label(x, y + 90 + (index + 1) * LINE, text, { anchor: 'middle', soft: true }))
          .join('')
      );
    })
    .join('');
}

/** A length under the marks, at their scale, with what it is. */
const lengthBelow = (y: number, length: number, said: string): string =>
  levelDimension({ y, from: 24, to: 24 + length, text: '', outline: y + 8 }) +
  label(24 + length + 24, y + 4, said);

/** The least sweep, and the width over which a mark is looked at again. */
function leastDrawn({ least }: TipMarks, top: number, scale: number, ruler: Ruler): string {
  if (least === undefined) return '';
  const { width, most } = least;
  return (
    lengthBelow(top + 16, width * scale, `least sweep ${ruler.text(width)}`) +
    lengthBelow(top + 40, most * scale, `look again over ${ruler.text(most)}`)
  );
}

function described({ marks, least, follower = false }: TipMarks, ruler: Ruler): string {
  const told = marks
    .map((mark) => `${mark.name}: ${ruler.text(mark.width)} wide, ${whereSaid(mark)}`)
    .join('; ');
  const of =
    least === undefined
      ? ''
      : ` The least sweep of this lift on this arm is ${ruler.text(least.width)}; over ${ruler.text(least.most)} the mark is looked at again.`;
  return `The stem’s end seen from above, ${SEEN[follower ? 'follower' : 'rocker']}. ${told}.${of}`;
}

/** Marks side by side on the stem they were read on, to scale, in the order they are given. */
export function tipMarks(data: TipMarks, { id, ruler }: DrawnFor): Drawing {
  const { title, stem, stemKnown, marks, least, follower = false } = data;
  const scale = (2 * RADIUS) / stem;
  const ruled = 26 + Math.ceil(marks.length / COLUMNS) * rowTall(marks);
  const placed = marks.every(({ farUnknown }) => farUnknown !== true);
  const [left, right] = ENDS[follower ? 'follower' : 'rocker'];
  return {
    id,
    title,
    desc: described(data, ruler),
    viewBox: `0 0 320 ${ruled + (least === undefined ? 0 : 56)}`,
    svg:
      label(4, 14, left ?? '', { soft: true }) +
      label(316, 14, right ?? '', { soft: true, anchor: 'end' }) +
      marksDrawn(marks, scale, ruler) +
      leastDrawn(data, ruled, scale, ruler),
    toScale: stemKnown && placed,
    caption: stemKnown ? title : `${title}; the stem’s size was not said and is drawn as ${ruler.text(stem)}`,
    table: {
      caption: title,
      columns: [
        { label: follower ? 'Mark' : 'Pushrod' },
        { label: 'Width', number: true },
        { label: 'Where' },
      ],
      rows: marks.map((mark) => ({ cells: [mark.name, ruler.text(mark.width), whereSaid(mark)] })),
    },
  };
}
