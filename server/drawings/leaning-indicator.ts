import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

type Contact = 'flat-face' | 'carried-point';

/** The tip starts here in both views, and the part moves up by this much on the sheet. */
const START = 196;
const MOTION = 60;
/** More than this does not fit the sheet; the lean is then drawn at it, and the drawing is not to scale. */
const MOST = 38;

interface View {
  /** Where the tip stands at the start. */
  readonly x: number;
  readonly lean: number;
  readonly contact: Contact;
  readonly marked: boolean;
}

/** A plunger with its dial, leaning to the right from the place it touches. */
function plunger({ x, lean }: View, y: number, className: string): string {
  const [sin, cos] = [Math.sin(lean), Math.cos(lean)];
  const end = (length: number) => [x + length * sin, y - length * cos] as const;
  const [sx, sy] = end(92);
  const [dx, dy] = end(112);
  return (
    line(className, x, y, sx, sy) + circle('draw-outline', dx, dy, 20) + circle('draw-behind', dx, dy, 15)
  );
}

/** What the part did, what the plunger did, and the little triangle between the two. */
function view(given: View): string {
  const { x, lean, contact, marked } = given;
  const flat = contact === 'flat-face';
  const end = START - MOTION;
  // On a flat face the plunger stays on its own line; carried along, the tip stays on the part.
  const slid = flat ? MOTION * Math.tan(lean) : 0;
  const along = flat ? MOTION / Math.cos(lean) : MOTION * Math.cos(lean);
  const tip: readonly [number, number] = [x + along * Math.sin(lean), START - along * Math.cos(lean)];
  const part = flat
    ? path('draw-behind', `M${at(x - 42)} ${START}H${at(x + 58)}`) +
      path('draw-outline', `M${at(x - 42)} ${end}H${at(x + 58)}`)
    : circle('draw-behind', x, START, 4) + circle('draw-outline', x, end, 4);
  return (
    part +
    plunger(given, START, 'draw-behind') +
    path('draw-dim', `M${at(x - 30)} ${START}V${end}`, { 'marker-end': 'url(#arrow)' }) +
    path(marked ? 'draw-moving' : 'draw-outline', `M${at(x)} ${START}L${at(tip[0])} ${at(tip[1])}`) +
    (flat ? '' : path('draw-centre', `M${at(x)} ${end}L${at(tip[0])} ${at(tip[1])}`)) +
    circle(marked ? 'draw-moving-solid' : 'draw-solid', x + slid, flat ? end : tip[1], flat ? 3.5 : 0.01)
  );
}

/** An indicator that leans: on a flat face that slides under it it reads too much, carried by a point too little. */
export function leaningIndicator(
  data: {
    /** Degrees. */
    readonly tilt: number;
    readonly contact: Contact;
    /** Inches: what it shows and what the part really did. */
    readonly read?: { readonly reading: number; readonly trueMotion: number };
  },
  { id, ruler }: DrawnFor,
): Drawing {
  const drawnTilt = Math.min(data.tilt, MOST);
  const lean = (drawnTilt * Math.PI) / 180;
  const { read, contact } = data;
  const figures =
    read === undefined
      ? ''
      : `It shows ${ruler.text(read.reading)}; the part moved ${ruler.text(read.trueMotion)}. `;
  const tilt = `${Number(data.tilt.toFixed(2))}°`;
  const marked = (each: Contact) => each === contact;
  const strong = (each: Contact) => (marked(each) ? { className: 'draw-text-strong' } : { soft: true });
  return {
    id,
    title: 'An indicator that leans',
    desc: `${figures}The plunger leans ${tilt} from the line of the motion. On a flat face that slides under the tip it reads too much, by one over the cosine; carried along by one point it reads too little, by the cosine.`,
    viewBox: '0 0 320 270',
    svg:
      view({ x: 52, lean, contact: 'flat-face', marked: marked('flat-face') }) +
      view({ x: 212, lean, contact: 'carried-point', marked: marked('carried-point') }) +
      label(6, 222, 'a flat face slides', strong('flat-face')) +
      label(6, 239, 'reads too much', strong('flat-face')) +
      label(166, 222, 'a point carries it', strong('carried-point')) +
      label(166, 239, 'reads too little', strong('carried-point')) +
      label(
        160,
        262,
        `lean ${tilt}${read === undefined ? '' : `: shows ${ruler.figure(read.reading)}, moved ${ruler.text(read.trueMotion)}`}`,
        {
          anchor: 'middle',
        },
      ),
    toScale: drawnTilt === data.tilt && read !== undefined,
    caption: 'Arrow: what the part does. Thick: what the plunger does.',
    table: {
      caption: 'What a lean does to the reading',
      columns: [{ label: 'What the tip rests on' }, { label: 'Reading over motion', number: true }],
      rows: [
        {
          cells: ['A flat face that slides under it', (1 / Math.cos((data.tilt * Math.PI) / 180)).toFixed(4)],
        },
        { cells: ['A point that carries it along', Math.cos((data.tilt * Math.PI) / 180).toFixed(4)] },
      ],
    },
  };
}
