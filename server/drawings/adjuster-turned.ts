import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';
import { turnText } from './turn-text.ts';

export type AdjusterPlace = 'stud-nut' | 'cup-screw' | 'valve-end-screw';

const TIP = { x: 58, y: 118 } as const;
const PIVOT = { x: 166, y: 118 } as const;
const CUP = { x: 236, y: 118 } as const;
/** How far the screw is drawn to go; a real turn would not be seen at this size. */
const GOES = 11;
const VALVE_SCREW_END = 126 + GOES;
/** The lever of the drawn rocker: the cup goes this much further than the pivot when the tip stands still. */
const LEVER = (CUP.x - TIP.x) / (PIVOT.x - TIP.x);
const SOLID_LEVER = (CUP.x - TIP.x) / (CUP.x - PIVOT.x);

const ROLLER = 18;
/** The stem's end, below the roller wherever that comes down to: the two touch, and neither stands in the other. */
const stem = (top: number) => path('draw-outline', `M${TIP.x - 7} 230V${at(top)}H${TIP.x + 7}V230`);
const stud = path('draw-behind', `M${PIVOT.x - 7} 34V214M${PIVOT.x + 7} 34V214`);
const pushrod = (y: number, className = 'draw-outline') =>
  path(className, `M${CUP.x - 5} 230V${at(y + 14)}M${CUP.x + 5} 230V${at(y + 14)}`) +
  path(className, `M${CUP.x - 8} ${at(y + 12)}A8 8 0 0 1 ${CUP.x + 8} ${at(y + 12)}`);

/** A rocker as its two arms with roller, pivot and cup, each at a height of its own. */
const rocker = (className: string, tip: number, pivot: number, cup: number) =>
  path(className, `M${TIP.x} ${at(tip)}L${PIVOT.x} ${at(pivot)}L${CUP.x} ${at(cup)}`) +
  circle(className, TIP.x, tip, ROLLER) +
  circle(className, PIVOT.x, pivot, 9);

/** Which way it is turned: an arc over the screw with its arrow. */
const turning = (x: number, y: number) =>
  path('draw-moving', `M${x - 17} ${y}A17 6 0 1 1 ${x + 15} ${y + 3}`) +
  path('draw-moving', `M${x + 15} ${y + 3}l-8 1M${x + 15} ${y + 3}l3 -8`);

const downArrow = (x: number, y: number) =>
  path('draw-dim', `M${at(x)} ${at(y - 22)}V${at(y)}`, { 'marker-end': 'url(#arrow)' });

const screw = (x: number, top: number, bottom: number) =>
  path('draw-moving', `M${x - 6} ${top}H${x + 6}V${bottom}H${x - 6}Z`) +
  path('draw-outline', `M${x - 12} 88H${x + 12}V98H${x - 12}Z`);

interface Look {
  /** Where the stem ends once it is tightened. */
  readonly stemTop: number;
  readonly svg: string;
  readonly said: string;
}

/** What moves when it is turned: with a plunger that gives way the tip stands still, with a solid lifter the cup does. */
const LOOKS: Readonly<Record<AdjusterPlace, (solid: boolean) => Look>> = {
  'stud-nut': (solid) => {
    const tip = solid ? TIP.y + GOES * SOLID_LEVER * 0.7 : TIP.y;
    const pivot = PIVOT.y + (solid ? GOES * 0.7 : GOES);
    const cup = solid ? CUP.y : CUP.y + GOES * LEVER;
    return {
      stemTop: tip + ROLLER,
      svg:
        stud +
        rocker('draw-behind', TIP.y, PIVOT.y, CUP.y) +
        rocker('draw-moving', tip, pivot, cup) +
        pushrod(cup) +
        path(
          'draw-outline',
          `M${PIVOT.x - 18} ${at(pivot - 32)}H${PIVOT.x + 18}V${at(pivot - 12)}H${PIVOT.x - 18}Z`,
        ) +
        turning(PIVOT.x, 52) +
        downArrow(PIVOT.x + 34, pivot) +
        downArrow(solid ? TIP.x + 30 : CUP.x + 28, (solid ? tip : cup) + 16) +
        label(PIVOT.x + 26, 48, 'nut on the stud') +
        label(PIVOT.x + 42, pivot - 12, 'pivot down', { soft: true }) +
        label(solid ? TIP.x + 36 : 316, solid ? tip + 30 : 210, solid ? 'tip down' : 'cup down', {
          soft: true,
          anchor: solid ? 'start' : 'end',
        }),
      said: solid
        ? 'The nut carries the pivot down the stud by the pitch of the thread for each turn. The cup stands still on the pushrod and the tip comes down on the stem: the gap closes by the pitch times one and the ratio.'
        : 'The nut carries the pivot down the stud by the pitch of the thread for each turn. The tip stands still on the stem and the cup goes further than the pivot: by the pitch times one and one over the ratio.',
    };
  },
  'cup-screw': (solid) => ({
    stemTop: TIP.y + ROLLER,
    svg:
      circle('draw-outline', PIVOT.x, PIVOT.y, 15) +
      rocker('draw-outline', TIP.y, PIVOT.y, CUP.y) +
      screw(CUP.x, 62, 132 + GOES) +
      pushrod(CUP.y + 14 + GOES) +
      turning(CUP.x, 50) +
      downArrow(CUP.x + 28, 168) +
      label(CUP.x - 26, 48, 'screw at the pushrod', { anchor: 'end' }) +
      label(316, 186, 'down', { soft: true, anchor: 'end' }) +
      label(PIVOT.x, 154, 'shaft', { soft: true, anchor: 'middle' }),
    said: solid
      ? 'The screw at the pushrod goes down by the pitch of its thread for each turn. The pushrod stands still, so the rocker turns on its shaft and the gap at the stem closes by the ratio times the pitch.'
      : 'The screw at the pushrod goes down by the pitch of its thread for each turn and takes the pushrod with it; pivot and tip stand still.',
  }),
  'valve-end-screw': (solid) => ({
    // The screw itself stands on it.
    stemTop: VALVE_SCREW_END,
    svg:
      path('draw-outline', `M${TIP.x} ${TIP.y}L${PIVOT.x} ${PIVOT.y}L${CUP.x} ${CUP.y}`) +
      circle('draw-outline', PIVOT.x, PIVOT.y, 15) +
      circle('draw-outline', PIVOT.x, PIVOT.y, 9) +
      screw(TIP.x, 62, VALVE_SCREW_END) +
      pushrod(CUP.y) +
      turning(TIP.x, 50) +
      downArrow(TIP.x + 28, 150) +
      label(TIP.x + 26, 48, 'screw at the valve') +
      label(TIP.x + 22, 168, 'down', { soft: true }) +
      label(PIVOT.x, 154, 'shaft', { soft: true, anchor: 'middle' }),
    said: solid
      ? 'The screw at the valve goes down by the pitch of its thread for each turn, and the gap at the stem closes by as much.'
      : 'The screw at the valve goes down by the pitch of its thread for each turn; the rocker turns back and presses the lifter’s plunger by the pitch over the ratio.',
  }),
};

interface TurnedAdjuster {
  readonly mount: AdjusterPlace;
  readonly lifter: 'hydraulic' | 'solid';
  /** Left out before anything is computed. Lengths in inches. */
  readonly turned?: {
    readonly turns: number;
    readonly advance: number;
    readonly seatMovement?: number | undefined;
    readonly lashChange?: number | undefined;
  };
}

const RULES: Readonly<Record<AdjusterPlace, { hydraulic: string; solid: string }>> = {
  'stud-nut': { hydraulic: 'cup: pitch × (1 + 1/ratio)', solid: 'gap: pitch × (1 + ratio)' },
  'cup-screw': { hydraulic: 'cup: one pitch', solid: 'gap: pitch × ratio' },
  'valve-end-screw': { hydraulic: 'plunger: pitch ÷ ratio', solid: 'gap: one pitch' },
};

/** What a turn of the adjuster moves, and by how much, at its own mount. */
export function adjusterTurned({ mount, lifter, turned }: TurnedAdjuster, { id, ruler }: DrawnFor): Drawing {
  const { svg, said, stemTop } = LOOKS[mount](lifter === 'solid');
  const effect =
    turned?.seatMovement !== undefined
      ? `plunger ${turned.seatMovement < 0 ? 'up' : 'down'} ${ruler.text(Math.abs(turned.seatMovement))}`
      : turned?.lashChange !== undefined
        ? `gap ${turned.lashChange > 0 ? 'grows' : 'closes'} ${ruler.text(Math.abs(turned.lashChange))}`
        : RULES[mount][lifter];
  const first = turned === undefined ? 'one turn: one pitch of the thread' : turnText(turned.turns);
  const loosened = turned !== undefined && turned.turns < 0;
  return {
    id,
    title: 'What a turn of the adjuster does',
    desc: `${said} ${first}; ${effect}.`,
    viewBox: '0 0 320 302',
    svg:
      stem(stemTop) +
      svg +
      label(TIP.x, 246, 'valve', { anchor: 'middle', soft: true }) +
      label(CUP.x, 246, 'pushrod', { anchor: 'middle', soft: true }) +
      label(160, 274, first, { anchor: 'middle' }) +
      label(160, 294, effect, { anchor: 'middle', className: 'draw-text-strong' }),
    toScale: false,
    caption: `${loosened ? 'Drawn tightening; loosening goes the other way.' : 'Tightening.'} Thin: before. The movement is drawn larger than it is.`,
    ...(turned === undefined
      ? {}
      : {
          table: {
            caption: 'What the turns do',
            columns: [{ label: 'What' }, { label: 'Figure', number: true }],
            rows: [
              { cells: ['Nut or screw', turnText(turned.turns)] },
              { cells: ['It goes along its thread', ruler.text(Math.abs(turned.advance))] },
              {
                cells: [
                  lifter === 'hydraulic' ? 'The lifter’s plunger goes' : 'The gap at the valve changes by',
                  ruler.text(turned.seatMovement ?? turned.lashChange ?? 0),
                ],
              },
            ],
          },
        }),
  };
}
