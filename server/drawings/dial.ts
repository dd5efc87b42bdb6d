import { dialWords, faceUnit } from '../../shared/quantities/dial-words.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, element, label, path } from './svg.ts';

/** A dial indicator as it should look now. Lengths in inches. */
interface Dial {
  readonly perTurn: number;
  readonly graduation: number;
  readonly turns: number;
  /** How far the hand stands past the turn, in the direction it runs. */
  readonly needle: number;
  readonly runs: 'clockwise' | 'anticlockwise';
  /** Turns that the small hand showed at zero, the plunger pushed in; left out, it is counted from zero. */
  readonly startedAt?: number;
}

const FACE = { x: 160, y: 136, r: 112 } as const;
const SMALL = { x: 160, y: 177, r: 32 } as const;
/** Finer marks than these run together at the size of a phone. */
const MOST_MARKS = 100;

function around(middle: { x: number; y: number }, degrees: number, radius: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${at(middle.x + radius * Math.sin(angle))} ${at(middle.y - radius * Math.cos(angle))}`;
}

function placeOf(
  middle: { x: number; y: number },
  degrees: number,
  radius: number,
): { x: number; y: number } {
  const angle = (degrees * Math.PI) / 180;
  return { x: middle.x + radius * Math.sin(angle), y: middle.y - radius * Math.cos(angle) + 4.5 };
}

/** Marks round the face, a longer one at each tenth of the turn with its number, clockwise as faces are printed. */
function face(perTurn: number, graduation: number, unitOfFace: number): string {
  const divisions = Math.round(perTurn / graduation);
  const step = Math.max(1, Math.ceil(divisions / MOST_MARKS));
  const count = Math.max(1, Math.floor(divisions / step));
  const marks = Array.from({ length: count }, (_, mark) => {
    const degrees = (mark * step * 360) / divisions;
    return `M${around(FACE, degrees, FACE.r - 4)}L${around(FACE, degrees, FACE.r - 10)}`;
  });
  const tenths = Array.from({ length: 10 }, (_, tenth) => {
    const { x, y } = placeOf(FACE, tenth * 36, FACE.r - 28);
    const number = Math.round((perTurn * tenth) / 10 / unitOfFace);
    return {
      mark: `M${around(FACE, tenth * 36, FACE.r - 4)}L${around(FACE, tenth * 36, FACE.r - 17)}`,
      number: label(x, y, String(number), { anchor: 'middle' }),
    };
  });
  return (
    circle('draw-outline', FACE.x, FACE.y, FACE.r) +
    path('draw-behind', marks.join('')) +
    path('draw-outline', tenths.map(({ mark }) => mark).join('')) +
    tenths.map(({ number }) => number).join('')
  );
}

/** A hand, and the angle it is drawn at: a script turns it from there to what is being typed. */
const hand = (of: 'needle' | 'small', middle: { x: number; y: number }, degrees: number, inside: string) =>
  element('g', { 'data-hand': of, 'data-at': degrees, 'data-x': middle.x, 'data-y': middle.y }, inside);

/** The small dial counts the turns; its figures run with the plunger as it is pushed in, and most run clockwise so. */
function smallDial(position: number): string {
  const ticks = Array.from(
    { length: 10 },
    (_, tick) => `M${around(SMALL, tick * 36, SMALL.r)}L${around(SMALL, tick * 36, SMALL.r - 5)}`,
  );
  const figures = Array.from({ length: 5 }, (_, pair) => {
    const { x, y } = placeOf(SMALL, pair * 72, SMALL.r - 12);
    return label(x, y - 1.5, String(pair * 2), { anchor: 'middle', className: 'draw-text-small' });
  });
  const degrees = (position % 10) * 36;
  return (
    circle('draw-behind draw-ground', SMALL.x, SMALL.y, SMALL.r) +
    path('draw-behind', ticks.join('')) +
    figures.join('') +
    hand(
      'small',
      SMALL,
      degrees,
      // Broad at its foot: it is told from the needle that may lie over it.
      path(
        'draw-moving-solid',
        `M${around(SMALL, degrees, SMALL.r - 5)}L${around(SMALL, degrees + 90, 4.5)}L${around(SMALL, degrees - 90, 4.5)}Z`,
      ),
    )
  );
}

/** A long point and a short tail that ends in a ring, so that nobody reads the tail. */
function bigHand(degrees: number): string {
  const tip = around(FACE, degrees, FACE.r - 12);
  const ring = placeOf(FACE, degrees + 180, 20);
  return (
    hand(
      'needle',
      FACE,
      degrees,
      path(
        'draw-moving-solid',
        `M${tip}L${around(FACE, degrees + 90, 4)}L${around(FACE, degrees + 180, 14)}L${around(FACE, degrees - 90, 4)}Z`,
      ) + circle('draw-moving', ring.x, ring.y - 4.5, 6),
    ) + circle('draw-solid', FACE.x, FACE.y, 5)
  );
}

/** Which way the hand runs, as an arrow outside the face. */
function running(runs: Dial['runs']): string {
  const sign = runs === 'clockwise' ? 1 : -1;
  const radius = FACE.r + 8;
  return path(
    'draw-dim',
    `M${around(FACE, sign * 12, radius)}A${radius} ${radius} 0 0 ${sign > 0 ? 1 : 0} ${around(FACE, sign * 48, radius)}`,
    { 'marker-end': 'url(#arrow)' },
  );
}

/** A line under the face that says what is drawn; a script says there what is being typed. */
const line = (
  of: 'total' | 'hand' | 'small',
  y: number,
  text: string,
  look: { readonly soft?: boolean; readonly className?: string },
) => element('g', { 'data-dial-line': of }, label(FACE.x, y, text, { anchor: 'middle', ...look }));

/** Face, hand, small hand and direction of run, to be held against the real indicator. */
export function dial(data: Dial, { id, ruler }: DrawnFor): Drawing {
  const part = data.needle / data.perTurn;
  const degrees = (data.runs === 'clockwise' ? part : -part) * 360;
  const words = dialWords({
    perTurn: data.perTurn,
    gone: data.turns * data.perTurn + data.needle,
    runs: data.runs,
    startedAt: data.startedAt,
    unit: ruler.unit,
  });
  return {
    id,
    title: 'The dial as it should look',
    desc: words.desc,
    viewBox: '0 0 320 312',
    svg:
      face(data.perTurn, data.graduation, faceUnit(ruler.unit)) +
      running(data.runs) +
      // The needle lies over the small dial, as it does on a real one.
      smallDial(words.position) +
      bigHand(degrees) +
      line('total', 268, words.total, { className: 'draw-text-strong' }) +
      line('hand', 286, words.hand, { soft: true }) +
      line('small', 303, words.small, { soft: true }),
    toScale: false,
    caption: 'Hold it against your dial',
    table: {
      caption: 'The dial',
      columns: [{ label: 'What' }, { label: 'Stands at', number: true }],
      rows: words.rows.map((cells) => ({ cells: [...cells] })),
    },
  };
}
