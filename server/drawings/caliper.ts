import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, label, path } from './svg.ts';

/** A caliper's jaws about a part, or inside a hole. Lengths in inches. */
interface Caliper {
  readonly reading: number;
  readonly inside: boolean;
  /** What is between or around the jaws, in a word or two. */
  readonly part: string;
}

const BEAM = 48;
const LEFT = 40;

/** Marks of the beam: one each tenth of an inch or each five millimetres, numbered at each whole one or ten. */
function beam(perInch: number, unit: 'in' | 'mm'): string {
  const step = unit === 'in' ? 0.1 : 5 / 25.4;
  const every = unit === 'in' ? 10 : 2;
  const count = Math.floor(262 / (perInch * step));
  const marks = Array.from({ length: count + 1 }, (_, mark) => {
    const x = LEFT + mark * step * perInch;
    return `M${at(x)} ${BEAM}v${mark % every === 0 ? 13 : 7}`;
  });
  const numbers = Array.from({ length: Math.floor(count / every) + 1 }, (_, number) =>
    label(LEFT + number * every * step * perInch, BEAM - 5, String(unit === 'in' ? number : number * 10), {
      anchor: 'middle',
      soft: true,
    }),
  );
  return (
    path('draw-outline', `M12 ${BEAM}H314V${BEAM + 24}H12Z`) +
    path('draw-behind', marks.join('')) +
    numbers.join('')
  );
}

/** A caliper set to a reading, with the part between its jaws: to be held against the real one. */
export function caliper(data: Caliper, { id, ruler }: DrawnFor): Drawing {
  // A small part is drawn large enough to see, a long one small enough to fit.
  const perInch = Math.min(220, 215 / Math.max(data.reading, 0.2));
  const right = LEFT + data.reading * perInch;
  const text = ruler.text(data.reading);
  const reach = 196;
  const jaws = data.inside
    ? {
        fixed: `M${LEFT} ${BEAM + 24}V${reach}H${LEFT + 7}V${BEAM + 24}`,
        slide: `M${at(right)} ${BEAM + 24}V${reach}H${at(right - 7)}V${BEAM + 24}`,
      }
    : {
        fixed: `M${LEFT - 22} ${BEAM + 24}L${LEFT - 8} ${reach}H${LEFT}V${BEAM + 24}`,
        slide: `M${at(right + 22)} ${BEAM + 24}L${at(right + 8)} ${reach}H${at(right)}V${BEAM + 24}`,
      };
  const partTop = 112;
  const part = data.inside
    ? path(
        'draw-cut',
        `M${LEFT - 20} ${partTop}H${LEFT}V${reach + 14}H${LEFT - 20}ZM${at(right)} ${partTop}H${at(right + 20)}V${reach + 14}H${at(right)}Z`,
      )
    : path('draw-cut', `M${LEFT} ${partTop}H${at(right)}V${reach - 22}H${LEFT}Z`);
  return {
    id,
    title: `Caliper ${data.inside ? 'inside' : 'across'} the ${data.part}`,
    desc: `The jaws stand ${text} ${data.inside ? 'apart inside' : 'apart across'} the ${data.part}.`,
    viewBox: '0 0 320 250',
    svg:
      beam(perInch, ruler.unit) +
      part +
      path('draw-outline', jaws.fixed) +
      path('draw-moving', `${jaws.slide}M${at(right - 4)} ${BEAM - 2}v28h44v-28Z`) +
      levelDimension({ y: 232, from: LEFT, to: right, text, outline: reach + (data.inside ? 14 : -22) }),
    toScale: false,
    caption: `Caliper ${data.inside ? 'inside' : 'across'} the ${data.part}`,
    table: {
      caption: 'Caliper',
      columns: [{ label: 'What' }, { label: 'Reading', number: true }],
      rows: [{ cells: [data.part, text] }],
    },
  };
}
