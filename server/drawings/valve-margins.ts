import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, label, line, path } from './svg.ts';

/** One valve, in inches; what is not known is left out of the drawing. */
export interface ValveMargins {
  readonly installedHeight: number;
  readonly netLift: number;
  /** Where no lash is known it is the most that there can be, and no net lift. */
  readonly noLashKnown?: boolean;
  /** Height, from the seat that the installed height is from, at which the first of the springs goes solid. */
  readonly solidHeight?: number;
  /** What the room above it is called. */
  readonly bindTitle?: string;
  /** Retainer's underside to the seal, valve shut. */
  readonly retainerToSeal?: number;
  /** Where valve and piston come closest. */
  readonly piston?: { readonly lift: number; readonly gap: number; readonly atCrank: string };
}

interface Station {
  readonly x: number;
  readonly name: string;
  readonly lift: number;
  readonly gap?: number;
}

const TOP = 30;
const BOTTOM = 306;
/** Stem and head between spring seat and valve head are broken off: their length does not matter. */
const BREAK = 46;
const HALF = 20;
const COILS = 6;

function spring(x: number, top: number, seat: number): string {
  const pitch = (seat - top) / COILS;
  const near = Array.from({ length: COILS }, (_, coil) => {
    const y = top + coil * pitch;
    return `M${at(x - HALF)} ${at(y + pitch * 0.2)}L${at(x + HALF)} ${at(y + pitch * 0.7)}`;
  });
  return path('draw-behind', near.join(''));
}

/** Seal and guide stand still; the seal is drawn narrower than the spring around it. */
function sealAt(x: number, top: number, seat: number): string {
  return path('draw-outline', `M${at(x - 9)} ${at(seat)}V${at(top)}H${at(x + 9)}V${at(seat)}`);
}

function valve(x: number, retainerUnderside: number, seat: number, head: number): string {
  return (
    path(
      'draw-moving',
      `M${at(x - HALF - 4)} ${at(retainerUnderside - 8)}H${at(x + HALF + 4)}V${at(retainerUnderside)}H${at(x - HALF - 4)}Z`,
    ) +
    path(
      'draw-moving',
      `M${at(x)} ${at(retainerUnderside)}V${at(seat + 14)}M${at(x)} ${at(seat + 26)}V${at(head - 8)}`,
    ) +
    path('draw-moving', `M${at(x - 22)} ${at(head)}H${at(x + 22)}L${at(x + 6)} ${at(head - 8)}H${at(x - 6)}Z`)
  );
}

function stationsOf({ netLift, piston }: ValveMargins): Station[] {
  if (piston === undefined)
    return [
      { x: 84, name: 'shut', lift: 0 },
      { x: 216, name: 'full lift', lift: netLift },
    ];
  return [
    { x: 52, name: 'shut', lift: 0 },
    { x: 150, name: piston.atCrank, lift: piston.lift, gap: piston.gap },
    { x: 250, name: 'full lift', lift: netLift },
  ];
}

/** One valve shut, closest to its piston and at full lift, at one scale along the stem, each gap dimensioned. */
export function valveMargins(data: ValveMargins, { id, ruler }: DrawnFor): Drawing {
  const stations = stationsOf(data);
  const below = Math.max(data.netLift, (data.piston?.lift ?? 0) + Math.max(0, data.piston?.gap ?? 0));
  const scale = (BOTTOM - TOP - BREAK - 14) / (data.installedHeight + below);
  const seat = TOP + data.installedHeight * scale;
  const retainer = (lift: number) => TOP + lift * scale;
  const head = (lift: number) => seat + BREAK + lift * scale;
  const sealTop = data.retainerToSeal === undefined ? undefined : TOP + data.retainerToSeal * scale;
  const drawn = stations.map(
    ({ x, name, lift, gap }) =>
      spring(x, retainer(lift), seat) +
      (sealTop === undefined ? '' : sealAt(x, sealTop, seat)) +
      path(
        'draw-cut',
        `M${at(x - 34)} ${at(seat)}H${at(x - 4)}V${at(seat + 10)}H${at(x - 34)}ZM${at(x + 4)} ${at(seat)}H${at(x + 34)}V${at(seat + 10)}H${at(x + 4)}Z`,
      ) +
      valve(x, retainer(lift), seat, head(lift)) +
      (gap === undefined
        ? ''
        : path(
            'draw-cut',
            `M${at(x - 34)} ${at(head(lift + gap))}H${at(x + 34)}V${at(head(lift + gap) + 10)}H${at(x - 34)}Z`,
          )) +
      label(x, 334, name, { anchor: 'middle', soft: true }),
  );
  const named = label(stations[0]?.x ?? 0, TOP - 14, 'retainer', { anchor: 'middle', soft: true });
  const full = stations.at(-1);
  const x = full?.x ?? 0;
  const solid = data.solidHeight === undefined ? undefined : seat - data.solidHeight * scale;
  const bind =
    data.solidHeight === undefined ? undefined : data.installedHeight - data.netLift - data.solidHeight;
  const seal = data.retainerToSeal === undefined ? undefined : data.retainerToSeal - data.netLift;
  const coil =
    solid === undefined || bind === undefined
      ? ''
      : line('draw-limit', x - HALF - 10, solid, x + HALF + 12, solid) +
        uprightDimension({
          x: x + 34,
          from: retainer(data.netLift),
          to: solid,
          text: ruler.figure(bind),
          outline: x + HALF + 4,
        });
  const toSeal =
    sealTop === undefined || seal === undefined
      ? ''
      : uprightDimension({
          x: x - 34,
          from: retainer(data.netLift),
          to: sealTop,
          text: ruler.figure(seal),
          outline: x - HALF - 4,
          side: 'end',
        });
  return {
    id,
    title: 'One valve: spring, retainer, seal and piston',
    desc: describe(data, bind, seal, ruler.text),
    viewBox: '0 0 320 342',
    svg:
      drawn.join('') +
      named +
      coil +
      toSeal +
      pistonDimension(stations, head, ruler.figure) +
      line('draw-behind', 6, seat + 20, 314, seat + 20),
    toScale: true,
    caption: 'Along the stem to scale; the stem is broken off between spring seat and head',
    table: {
      caption: 'Gaps of this valve',
      columns: [{ label: 'Gap' }, { label: `Left, ${ruler.unit}`, number: true }],
      rows: [
        { cells: [liftName(data), ruler.figure(data.netLift)] },
        ...(bind === undefined
          ? []
          : [{ cells: [`${data.bindTitle ?? 'To coil bind'}, full lift`, ruler.figure(bind)] }]),
        ...(seal === undefined ? [] : [{ cells: ['Retainer to seal, full lift', ruler.figure(seal)] }]),
        ...(data.piston === undefined
          ? []
          : [{ cells: [`Piston to valve, ${data.piston.atCrank}`, ruler.figure(data.piston.gap)] }]),
      ],
    },
  };
}

function pistonDimension(
  stations: readonly Station[],
  head: (lift: number) => number,
  figure: (inches: number) => string,
): string {
  return stations
    .map(({ x, lift, gap }) =>
      gap === undefined
        ? ''
        : label(x, head(lift + gap) + 26, 'piston', { anchor: 'middle', soft: true }) +
          uprightDimension({
            x: x + 34,
            from: head(lift),
            to: head(lift + gap),
            text: figure(gap),
            outline: x + 22,
          }),
    )
    .join('');
}

const liftName = ({ noLashKnown }: ValveMargins): string =>
  noLashKnown === true ? 'Gross lift, no lash known' : 'Net lift';

const leftSaid = (gap: number, text: (inches: number) => string): string =>
  gap < 0 ? `${text(-gap)} is wanting` : `${text(gap)} is left`;

function describe(
  data: ValveMargins,
  bind: number | undefined,
  seal: number | undefined,
  text: (inches: number) => string,
): string {
  const { piston } = data;
  return [
    `${liftName(data)} ${text(data.netLift)}.`,
    ...(bind === undefined ? [] : [`${leftSaid(bind, text)} before coil bind.`]),
    ...(seal === undefined ? [] : [`${leftSaid(seal, text)} between retainer and seal.`]),
    ...(piston === undefined ? [] : [`Closest to the piston ${piston.atCrank}: ${text(piston.gap)}.`]),
  ].join(' ');
}
