import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { label, line } from './svg.ts';
import { HALF, limitAt, named, pistonAt, sealAt, spring, springSeat, valve } from './valve-outline.ts';

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
  readonly piston?: {
    readonly lift: number;
    readonly gap: number;
    readonly atCrank: string;
    /** Left out where nobody said it: then its crown is drawn flat. */
    readonly floor?: 'pocket' | 'flat';
  };
  /** The least that has to be left, of those that are drawn. */
  readonly limits?: { readonly bind?: number; readonly seal?: number; readonly piston?: number };
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
function stationsOf({ netLift, piston }: ValveMargins): Station[] {
  if (piston === undefined)
    return [
      { x: 84, name: 'shut', lift: 0 },
      { x: 240, name: 'full lift', lift: netLift },
    ];
  return [
    { x: 46, name: 'shut', lift: 0 },
    { x: 154, name: piston.atCrank, lift: piston.lift, gap: piston.gap },
    { x: 272, name: 'full lift', lift: netLift },
  ];
}

/** What stands under a station: its name, and the limits that are ruled in it. */
function under({ x, name }: Station, limits: readonly string[]): string {
  return [name, ...limits]
    .map((text, row) =>
      label(x, 334 + row * 16, text, { anchor: 'middle', ...(row === 0 ? { soft: true } : {}) }),
    )
    .join('');
}

/** One valve shut, closest to its piston and at full lift, at one scale along the stem, each gap dimensioned. */
export function valveMargins(data: ValveMargins, { id, ruler }: DrawnFor): Drawing {
  const { limits = {}, piston } = data;
  const stations = stationsOf(data);
  const below = Math.max(data.netLift, (piston?.lift ?? 0) + Math.max(0, piston?.gap ?? 0));
  const scale = (BOTTOM - TOP - BREAK - 14) / (data.installedHeight + below);
  const seat = TOP + data.installedHeight * scale;
  const retainer = (lift: number) => TOP + lift * scale;
  const head = (lift: number) => seat + BREAK + lift * scale;
  const sealTop = data.retainerToSeal === undefined ? undefined : TOP + data.retainerToSeal * scale;
  const full = stations.at(-1);
  const drawn = stations.map(
    (station) =>
      spring(station.x, retainer(station.lift), seat) +
      (sealTop === undefined ? '' : sealAt(station.x, sealTop, seat)) +
      springSeat(station.x, seat) +
      valve(station.x, retainer(station.lift), seat, head(station.lift)) +
      (station.gap === undefined
        ? ''
        : pistonAt(station.x, head(station.lift + station.gap), piston?.floor) +
          (limits.piston === undefined
            ? ''
            : limitAt(station.x, head(station.lift + station.gap - limits.piston), 30))) +
      under(station, limitsUnder(station, station === full, data, ruler.figure)),
  );
  const x = full?.x ?? 0;
  const shut = stations[0]?.x ?? 0;
  const names =
    label(shut, TOP - 14, 'retainer', { anchor: 'middle', soft: true }) +
    named(shut + HALF - 4, shut + HALF + 12, TOP + 20, 'spring') +
    (sealTop === undefined ? '' : named(shut + 9, shut + HALF + 12, (sealTop + seat) / 2, 'seal')) +
    named(shut + 34, shut + 40, seat + 5, 'seat') +
    named(shut + 22, shut + 34, head(0) - 2, 'valve');
  const solid = data.solidHeight === undefined ? undefined : seat - data.solidHeight * scale;
  const bind =
    data.solidHeight === undefined ? undefined : data.installedHeight - data.netLift - data.solidHeight;
  const seal = data.retainerToSeal === undefined ? undefined : data.retainerToSeal - data.netLift;
  const coil =
    solid === undefined || bind === undefined
      ? ''
      : line('draw-dim', x - HALF - 6, solid, x + HALF + 6, solid) +
        (limits.bind === undefined ? '' : limitAt(x, solid - limits.bind * scale, HALF + 10)) +
        uprightDimension({
          x: x + 34,
          from: retainer(data.netLift),
          to: solid,
          text: ruler.figure(bind),
          name: 'bind',
          outline: x + HALF + 4,
        });
  const toSeal =
    sealTop === undefined || seal === undefined
      ? ''
      : (limits.seal === undefined ? '' : limitAt(x, sealTop - limits.seal * scale, 14)) +
        uprightDimension({
          x: x - 34,
          from: retainer(data.netLift),
          to: sealTop,
          text: ruler.figure(seal),
          name: 'seal',
          outline: x - HALF - 4,
          side: 'end',
        });
  return {
    id,
    title: 'One valve: spring, retainer, seal and piston',
    desc: describe(data, bind, seal, ruler.text),
    viewBox: '0 0 344 376',
    svg:
      drawn.join('') +
      names +
      coil +
      toSeal +
      pistonDimension(stations, head, data, ruler.figure) +
      line('draw-behind', 6, seat + 20, 338, seat + 20),
    toScale: true,
    caption: captionOf(data, ruler.unit === 'in' ? 'inches' : 'millimetres'),
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

/** Broken lines are limits; how deep a pocket is cut nobody said. */
const captionOf = ({ piston, limits }: ValveMargins, unit: string): string =>
  [
    'Along the stem to scale; the stem is broken off between spring seat and head',
    `figures in ${unit}`,
    ...(limits === undefined ? [] : ['broken lines: the limits']),
    ...(piston?.floor === 'pocket' ? ['the pocket’s walls are drawn, not measured'] : []),
  ].join('; ');

/** Each limit that is ruled in a station, by its name: `bind limit .060`. */
function limitsUnder(
  { gap }: Station,
  isFull: boolean,
  { limits = {}, solidHeight, retainerToSeal }: ValveMargins,
  figure: (inches: number) => string,
): string[] {
  const said = (name: string, limit: number | undefined) =>
    limit === undefined ? [] : [`${name} limit ${figure(limit)}`];
  return [
    ...(gap === undefined ? [] : said('piston', limits.piston)),
    ...(isFull && solidHeight !== undefined ? said('bind', limits.bind) : []),
    ...(isFull && retainerToSeal !== undefined ? said('seal', limits.seal) : []),
  ];
}

function pistonDimension(
  stations: readonly Station[],
  head: (lift: number) => number,
  { piston }: ValveMargins,
  figure: (inches: number) => string,
): string {
  const name = piston?.floor === 'pocket' ? 'pocket in the piston' : 'piston';
  return stations
    .map(({ x, lift, gap }) =>
      gap === undefined
        ? ''
        : label(x, head(lift + gap) + 26, name, { anchor: 'middle', soft: true }) +
          uprightDimension({
            x: x + 50,
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
  gap < 0 ? `${text(-gap)} is missing` : `${text(gap)} is left`;

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
