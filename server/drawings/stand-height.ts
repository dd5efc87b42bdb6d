import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

/** Lengths in inches; offsets are of the pivot below the roller’s axis, negative above it. */
interface StandHeight {
  readonly pivotToTip: number;
  readonly rollerRadius?: number | undefined;
  readonly now: number;
  readonly wanted: number;
  readonly shim: number;
  readonly nearest?: { readonly shim: number; readonly pivotOffset: number } | undefined;
}

const STEM = 56;
const AXIS = 112;
const ARM = 150;
/** The furthest that a pivot is drawn from the roller’s axis along the valve. */
const FURTHEST = 78;
const FLOOR = 208;

/** Rocker and stem with the valve closed: the pivot as measured, and where half the lift puts it. */
export function standHeight(data: StandHeight, { id, ruler }: DrawnFor): Drawing {
  const { now, wanted, shim, nearest, rollerRadius } = data;
  const arm = Math.max(data.pivotToTip, 1e-9);
  const scale = Math.min(ARM / arm, FURTHEST / Math.max(Math.abs(now), Math.abs(wanted), 1e-9));
  const roller = rollerRadius === undefined ? 15 : Math.min(rollerRadius * scale, 60);
  const pivotAt = (offset: number): readonly [number, number] => [
    STEM + Math.sqrt(Math.max(0, arm ** 2 - offset ** 2)) * scale,
    AXIS + offset * scale,
  ];
  const [before, after] = [pivotAt(now), pivotAt(wanted)];
  const rocker = (className: string, [x, y]: readonly [number, number]) =>
    line(className, STEM, AXIS, x, y) + circle(className, x, y, 8);
  const dimension = (x: number, name: string, offset: number, [outline, y]: readonly [number, number]) =>
    uprightDimension({ x, from: AXIS, to: y, text: ruler.figure(offset), outline: outline + 10 }) +
    label(x, Math.min(AXIS, y) - 22, name, { anchor: 'middle', soft: true });
  const still = Number(ruler.of(Math.abs(shim)).toFixed(4)) === 0;
  const said = still
    ? 'the height is right'
    : `${shim > 0 ? 'raise' : 'lower'} the stand ${ruler.text(Math.abs(shim))}`;
  const side = (offset: number) => (offset < 0 ? 'above' : 'below');
  return {
    id,
    title: 'Height of the stand',
    desc: `Valve closed. The pivot is ${ruler.text(Math.abs(now))} ${side(now)} the roller’s axis; half the lift wants it ${ruler.text(wanted)} below: ${said}.`,
    viewBox: '0 0 320 254',
    svg:
      path('draw-outline', `M${STEM - 10} ${FLOOR}V${at(AXIS + roller)}H${STEM + 10}V${FLOOR}`) +
      circle('draw-outline', STEM, AXIS, roller) +
      line('draw-centre', STEM - 24, AXIS, 312, AXIS) +
      rocker('draw-behind', before) +
      rocker('draw-moving', after) +
      dimension(226, 'now', now, before) +
      dimension(278, 'wanted', wanted, after) +
      label(STEM, 226, 'valve closed', { anchor: 'middle', soft: true }) +
      label(160, 246, said, { anchor: 'middle', className: 'draw-text-strong' }),
    toScale: true,
    caption: `Thin: as measured. Thick: where half the lift puts the pivot${rollerRadius === undefined ? '; the roller’s own size is not known' : ''}`,
    table: {
      caption: 'Pivot below the roller’s axis, valve closed',
      columns: [{ label: 'What' }, { label: `Length, ${ruler.unit}`, number: true }],
      rows: [
        { cells: ['As measured', ruler.figure(now)] },
        { cells: ['For the least sweep', ruler.figure(wanted)] },
        { cells: ['Raise the stand by, lower it where negative', ruler.figure(shim)] },
        ...(nearest === undefined
          ? []
          : [
              { cells: ['The nearest shim', ruler.figure(nearest.shim)] },
              { cells: ['With it the pivot is below by', ruler.figure(nearest.pivotOffset)] },
            ]),
      ],
    },
  };
}
