import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

const STEM_TOP = 150;
/** Gaps are drawn this high at the most; a real one would be a line. */
const TALLEST = 58;
const COLUMNS = { cold: 84, hot: 236 } as const;

/** Stem and roller with the gap between them. */
function gapAt(x: number, high: number, text: string, moving: boolean): string {
  const bottom = STEM_TOP - high;
  return (
    path('draw-outline', `M${at(x - 15)} 214V${STEM_TOP}H${x + 15}V214`) +
    path('draw-centre', `M${x} 58V220`) +
    circle(moving ? 'draw-moving' : 'draw-outline', x, bottom - 26, 26) +
    circle('draw-behind', x, bottom - 26, 7) +
    line('draw-behind', x - 40, bottom, x + 34, bottom) +
    uprightDimension({ x: x + 40, from: bottom, to: STEM_TOP, text, outline: x + 26 })
  );
}

/** The gap at the valve cold and hot, both drawn alike many times too large. */
export function lashGap(
  data: { readonly cold?: number; readonly hot?: number },
  { id, ruler }: DrawnFor,
): Drawing {
  const { cold, hot } = data;
  const known = cold !== undefined && hot !== undefined;
  const widest = known ? Math.max(Math.abs(cold), hot) : 0;
  const high = (gap: number | undefined, otherwise: number) =>
    known && widest > 0 ? (Math.max(0, gap ?? 0) / widest) * TALLEST : otherwise;
  const change = known ? hot - cold : 0;
  const said = known
    ? `Cold ${ruler.text(cold)}, hot ${ruler.text(hot)}: the gap ${change < 0 ? 'closes' : 'grows'} by ${ruler.text(Math.abs(change))} as the engine warms.`
    : 'The gap between roller and stem with the lifter on the base circle, cold and hot. It is another gap when the engine is hot: each reading says which it was.';
  return {
    id,
    title: 'Lash cold and hot',
    desc: said,
    viewBox: '0 0 320 254',
    svg:
      gapAt(COLUMNS.cold, high(cold, 42), known ? ruler.figure(cold) : 'gap', false) +
      gapAt(COLUMNS.hot, high(hot, 54), known ? ruler.figure(hot) : 'gap', true) +
      label(COLUMNS.cold, 24, 'cold', { anchor: 'middle', className: 'draw-text-strong' }) +
      label(COLUMNS.hot, 24, 'hot', { anchor: 'middle', className: 'draw-text-strong' }) +
      label(
        160,
        246,
        known ? `hot less cold ${ruler.text(change)}` : 'read on the base circle, feeler between',
        {
          anchor: 'middle',
        },
      ),
    toScale: false,
    caption: known
      ? 'The two gaps to one scale, many times too large'
      : 'Roller over stem, drawn many times too large; hot it may be more or less than cold',
    ...(known
      ? {
          table: {
            caption: 'Lash cold and hot',
            columns: [{ label: 'When' }, { label: `Gap, ${ruler.unit}`, number: true }],
            rows: [{ cells: ['Cold', ruler.figure(cold)] }, { cells: ['Hot', ruler.figure(hot)] }],
          },
        }
      : {}),
  };
}
