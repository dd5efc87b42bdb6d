import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

const MIDDLE = 160;
const AXIS = 150;
/** Half the sheet that the widest of the widths may take. */
const REACH = 118;

type Bolting = 'through-centre' | 'perimeter';

/** The cover over the assembly, cut across: bolts round its edge, or down beside the rockers. */
function cover(bolting: Bolting, inside: number): string {
  const [left, right] = [MIDDLE - inside, MIDDLE + inside];
  const shell = path(
    'draw-behind',
    `M${at(left - 12)} 196H${at(left)}V92C${at(left)} 74 ${at(left + 12)} 66 ${at(left + 30)} 66H${at(right - 30)}C${at(right - 12)} 66 ${at(right)} 74 ${at(right)} 92V196H${at(right + 12)}`,
  );
  const bolt = (x: number, top: number) =>
    path('draw-outline', `M${at(x - 5)} ${top}H${at(x + 5)}V${top + 8}H${at(x - 5)}Z`) +
    path('draw-centre', `M${at(x)} ${top - 4}V204`);
  return (
    shell +
    (bolting === 'perimeter'
      ? bolt(left - 6, 184) + bolt(right + 6, 184)
      : bolt(left + 4, 54) + bolt(right - 4, 54))
  );
}

/** Width across the trunnion against what counts as narrow and as wide, under the cover. */
export function coverWidth(
  data: {
    readonly bolting: Bolting;
    readonly width: number;
    readonly narrowUpTo: number;
    readonly wideFrom: number;
    readonly verdict: string;
    readonly reason: string;
  },
  { id, ruler }: DrawnFor,
): Drawing {
  const { width, narrowUpTo, wideFrom, bolting } = data;
  const scale = (2 * REACH) / Math.max(width, wideFrom);
  const half = (each: number) => (each * scale) / 2;
  const inside = bolting === 'perimeter' ? 142 : 134;
  const pair = (each: number) =>
    path('draw-limit', `M${at(MIDDLE - half(each))} 116V184M${at(MIDDLE + half(each))} 116V184`);
  return {
    id,
    title: 'Width across the trunnion, under the cover',
    desc: `The assembly is ${ruler.text(width)} across; up to ${ruler.text(narrowUpTo)} counts as narrow, from ${ruler.text(wideFrom)} as wide. The cover is bolted ${bolting === 'perimeter' ? 'round its edge' : 'through its centre'}: ${data.verdict}, ${data.reason}.`,
    viewBox: '0 0 320 252',
    svg:
      cover(bolting, inside) +
      pair(narrowUpTo) +
      pair(wideFrom) +
      path(
        'draw-moving',
        `M${at(MIDDLE - half(width))} ${AXIS - 11}H${at(MIDDLE + half(width))}V${AXIS + 11}H${at(MIDDLE - half(width))}Z`,
      ) +
      path('draw-outline', `M${MIDDLE - 40} 128H${MIDDLE + 40}V172H${MIDDLE - 40}Z`) +
      circle('draw-behind', MIDDLE, AXIS, 12) +
      path('draw-centre', `M${MIDDLE} 58V206`) +
      levelDimension({
        y: 34,
        from: MIDDLE - half(width),
        to: MIDDLE + half(width),
        text: `across ${ruler.text(width)}`,
        outline: AXIS - 14,
      }) +
      label(MIDDLE, 222, `narrow up to ${ruler.text(narrowUpTo)}`, { anchor: 'middle' }) +
      label(MIDDLE, 241, `wide from ${ruler.text(wideFrom)}`, { anchor: 'middle' }),
    toScale: true,
    caption: 'Widths across to scale; the cover’s shape is not, and height is a check of its own',
    table: {
      caption: 'Width across the trunnion',
      columns: [{ label: 'What' }, { label: 'Width', number: true }],
      rows: [
        { cells: ['This assembly', ruler.text(width)] },
        { cells: ['Narrow, up to', ruler.text(narrowUpTo)] },
        { cells: ['Wide, from', ruler.text(wideFrom)] },
      ],
    },
  };
}
