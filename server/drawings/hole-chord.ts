import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

const HOLE = { x: 108, y: 108, r: 76 } as const;
/** Half the flat of a jaw on the sheet, drawn larger than it is: a real one costs two thousandths. */
const FLAT = 26;
const MOST_ROWS = 4;

interface HoleFit {
  readonly designation: string;
  readonly nominal: number;
  readonly offset: number;
  readonly fit: string;
}

const FIT_WORDS: Readonly<Record<string, string>> = {
  agrees: 'agrees',
  'cannot-tell': 'can’t tell',
  differs: 'differs',
};

/** Inside jaws in a hole: their flats touch on a chord, so that the hole reads smaller than it is. */
export function holeChord(
  data: { readonly hole: number; readonly fasteners: readonly HoleFit[] },
  { id, ruler }: DrawnFor,
): Drawing {
  const { x, y, r } = HOLE;
  const chord = Math.sqrt(r ** 2 - FLAT ** 2);
  const jaw = (side: 1 | -1) =>
    path(
      'draw-moving',
      `M${at(x + side * chord)} ${at(y - FLAT)}V${at(y + FLAT)}H${at(x + side * 14)}V${at(y - FLAT)}Z`,
    );
  const shown = data.fasteners.slice(0, MOST_ROWS);
  const rows = shown
    .map(
      ({ designation, nominal, fit }, index) =>
        label(206, 62 + index * 46, designation, { className: 'draw-text-strong' }) +
        label(206, 79 + index * 46, `${ruler.figure(nominal)} ${FIT_WORDS[fit] ?? fit}`, {
          soft: true,
        }),
    )
    .join('');
  const [first] = shown;
  const over = (offset: number) => `${ruler.text(Math.abs(offset))} ${offset < 0 ? 'under' : 'over'}`;
  return {
    id,
    title: 'Inside jaws in a round hole',
    desc: `The jaws’ flats touch on a chord, so that the hole reads small. Read ${ruler.text(data.hole)}${first === undefined ? '' : `; ${first.designation} takes ${ruler.text(first.nominal)}: the reading is ${over(first.offset)}, ${FIT_WORDS[first.fit] ?? first.fit}`}.`,
    viewBox: '0 0 320 242',
    svg:
      circle('draw-outline', x, y, r) +
      jaw(1) +
      jaw(-1) +
      path('draw-centre', `M${x} ${y - r - 12}V${y + r + 12}M${x - r - 12} ${y}H${x + r + 12}`) +
      levelDimension({
        y: 216,
        from: x - chord,
        to: x + chord,
        text: `read ${ruler.text(data.hole)}`,
        outline: y + FLAT,
      }) +
      levelDimension({ y: 20, from: x - r, to: x + r, text: 'the hole itself', outline: y - 8 }) +
      label(206, 38, 'made for', { soft: true }) +
      rows,
    toScale: false,
    caption: 'The jaws’ flats are drawn larger than they are; a real pair costs .0004 to .0025 in',
    table: {
      caption: 'Hole as read, and what it may be made for',
      columns: [
        { label: 'Thread' },
        { label: 'Hole', number: true },
        { label: 'Read over or under', number: true },
        { label: 'Fit' },
      ],
      rows: data.fasteners.map(({ designation, nominal, offset, fit }) => ({
        cells: [designation, ruler.text(nominal), over(offset), FIT_WORDS[fit] ?? fit],
      })),
    },
  };
}
