import { uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { label, line } from './svg.ts';
import { bindOf, captionOf, describe, gapsTable, sealOf, type ValveMargins } from './valve-margins-said.ts';
import { HALF, limitAt, named, pistonAt, sealAt, spring, springSeat, valve } from './valve-outline.ts';

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

/** Where the parts of a valve stand on the sheet, along its stem at one scale. */
interface Places {
  readonly scale: number;
  readonly seat: number;
  readonly retainer: (lift: number) => number;
  readonly head: (lift: number) => number;
  readonly sealTop?: number;
}

function placesOf({ netLift, installedHeight, retainerToSeal, piston }: ValveMargins): Places {
  const below = Math.max(netLift, (piston?.lift ?? 0) + Math.max(0, piston?.gap ?? 0));
  const scale = (BOTTOM - TOP - BREAK - 14) / (installedHeight + below);
  const seat = TOP + installedHeight * scale;
  return {
    scale,
    seat,
    retainer: (lift) => TOP + lift * scale,
    head: (lift) => seat + BREAK + lift * scale,
    ...(retainerToSeal === undefined ? {} : { sealTop: TOP + retainerToSeal * scale }),
  };
}

/** Spring, seal, seat and valve as they stand there, and the piston under one that is closest to it. */
function stationDrawn(
  { x, lift, gap }: Station,
  { seat, retainer, head, sealTop }: Places,
  { piston, limits = {} }: ValveMargins,
): string {
  const limit =
    gap === undefined || limits.piston === undefined ? '' : limitAt(x, head(lift + gap - limits.piston), 30);
  return (
    spring(x, retainer(lift), seat) +
    (sealTop === undefined ? '' : sealAt(x, sealTop, seat)) +
    springSeat(x, seat) +
    valve(x, retainer(lift), seat, head(lift)) +
    (gap === undefined ? '' : pistonAt(x, head(lift + gap), piston?.floor)) +
    limit
  );
}

/** Each part by its name, beside the valve that is shut. */
function partNames(shut: number, { seat, head, sealTop }: Places): string {
  return (
    label(shut, TOP - 14, 'retainer', { anchor: 'middle', soft: true }) +
    named(shut + HALF - 4, shut + HALF + 12, TOP + 20, 'spring') +
    (sealTop === undefined ? '' : named(shut + 9, shut + HALF + 12, (sealTop + seat) / 2, 'seal')) +
    named(shut + 34, shut + 40, seat + 5, 'seat') +
    named(shut + 22, shut + 34, head(0) - 2, 'valve')
  );
}

type Figure = (inches: number) => string;

/** Room before the coils touch, at full lift. */
function coilDrawn(x: number, data: ValveMargins, { seat, scale, retainer }: Places, figure: Figure): string {
  const { solidHeight, netLift, limits = {} } = data;
  const bind = bindOf(data);
  if (solidHeight === undefined || bind === undefined) return '';
  const solid = seat - solidHeight * scale;
  return (
    line('draw-dim', x - HALF - 6, solid, x + HALF + 6, solid) +
    (limits.bind === undefined ? '' : limitAt(x, solid - limits.bind * scale, HALF + 10)) +
    uprightDimension({
      x: x + 34,
      from: retainer(netLift),
      to: solid,
      text: figure(bind),
      name: 'bind',
      outline: x + HALF + 4,
    })
  );
}

/** Room between retainer and seal, at full lift. */
function sealDrawn(x: number, data: ValveMargins, places: Places, figure: Figure): string {
  const { netLift, limits = {} } = data;
  const { scale, retainer, sealTop } = places;
  const seal = sealOf(data);
  if (sealTop === undefined || seal === undefined) return '';
  return (
    (limits.seal === undefined ? '' : limitAt(x, sealTop - limits.seal * scale, 14)) +
    uprightDimension({
      x: x - 34,
      from: retainer(netLift),
      to: sealTop,
      text: figure(seal),
      name: 'seal',
      outline: x - HALF - 4,
      side: 'end',
    })
  );
}

/** One valve shut, closest to its piston and at full lift, at one scale along the stem, each gap dimensioned. */
export function valveMargins(data: ValveMargins, { id, ruler }: DrawnFor): Drawing {
  const stations = stationsOf(data);
  const places = placesOf(data);
  const full = stations.at(-1);
  const x = full?.x ?? 0;
  const drawn = stations.map(
    (station) =>
      stationDrawn(station, places, data) +
      under(station, limitsUnder(station, station === full, data, ruler.figure)),
  );
  return {
    id,
    title: 'One valve: spring, retainer, seal and piston',
    desc: describe(data, bindOf(data), sealOf(data), ruler.text),
    viewBox: '0 0 344 376',
    svg:
      drawn.join('') +
      partNames(stations[0]?.x ?? 0, places) +
      coilDrawn(x, data, places, ruler.figure) +
      sealDrawn(x, data, places, ruler.figure) +
      pistonDimension(stations, places.head, data, ruler.figure) +
      line('draw-behind', 6, places.seat + 20, 338, places.seat + 20),
    toScale: true,
    caption: captionOf(data, ruler.unit === 'in' ? 'inches' : 'millimetres'),
    table: gapsTable(data, ruler.figure, ruler.unit),
  };
}

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
