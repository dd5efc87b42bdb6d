import { levelDimension, uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, path } from './svg.ts';

const COUNTED = 10;
const LEFT = 22;
const LONG = 194;
const MIDDLE = 122;
/** Depth of a sixty degree thread over its pitch, as it is cut: 5/8 of the sharp triangle's height. */
const DEPTH = 0.625 * Math.cos(Math.PI / 6);

/** Ten threads counted over a length: what a rule or caliper can tell on the phone. */
export function threadLength(
  data: { readonly designation: string; readonly pitch: number; readonly majorMax: number },
  { id, ruler }: DrawnFor,
): Drawing {
  const { pitch, designation } = data;
  const scale = LONG / (COUNTED * pitch);
  const step = pitch * scale;
  const radius = (data.majorMax * scale) / 2;
  // A thick stud would leave the sheet: of its far side only the edge is drawn then.
  const shown = Math.min(radius, 62);
  const [top, bottom] = [MIDDLE - shown, MIDDLE + shown];
  const crests = COUNTED + 2;
  const edge = (from: number, inward: number) =>
    Array.from({ length: crests }, (_, turn) => {
      const x = LEFT + turn * step;
      return `L${at(x)} ${at(from)}L${at(x + step / 2)} ${at(from + inward * DEPTH * step)}`;
    }).join('');
  const right = LEFT + (crests - 0.5) * step;
  const ten = COUNTED * pitch;
  return {
    id,
    title: `Ten threads of ${designation}`,
    desc: `Ten threads, counted from crest to crest, measure ${ruler.text(ten)}; one is ${ruler.text(pitch)}. The thread is up to ${ruler.text(data.majorMax)} over its crests.`,
    viewBox: '0 0 320 226',
    svg:
      path('draw-outline', `M${LEFT} ${at(top)}${edge(top, 1)}`) +
      path('draw-outline', `M${LEFT} ${at(bottom)}${edge(bottom, -1)}`) +
      path('draw-outline', `M${LEFT} ${at(top)}V${at(bottom)}`) +
      path('draw-centre', `M10 ${MIDDLE}H${at(right + 8)}`) +
      levelDimension({
        y: 36,
        from: LEFT,
        to: LEFT + LONG,
        text: `ten threads ${ruler.text(ten)}`,
        outline: top - 4,
      }) +
      levelDimension({ y: 214, from: LEFT, to: LEFT + step, text: '', outline: bottom + 4 }) +
      uprightDimension({
        x: 264,
        from: top,
        to: bottom,
        text: ruler.figure(data.majorMax),
        outline: right + 2,
      }) +
      `<text class="draw-text" x="${at(LEFT + step + 22)}" y="218">one thread ${ruler.text(pitch)}</text>`,
    toScale: shown === radius,
    caption:
      shown === radius
        ? `${designation}, ten threads`
        : `${designation}, ten threads; its thickness is drawn smaller`,
    table: {
      caption: `Thread ${designation}`,
      columns: [{ label: 'What' }, { label: 'Length', number: true }],
      rows: [
        { cells: ['Ten threads, crest to crest', ruler.text(ten)] },
        { cells: ['One thread, and a turn on it', ruler.text(pitch)] },
        { cells: ['Over the crests, at most', ruler.text(data.majorMax)] },
      ],
    },
  };
}
