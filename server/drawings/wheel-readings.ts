import { formatNumber } from '../../shared/quantities/format.ts';
import { isPointerOut } from '../mechanics/assessment/timing/readings.ts';
import { DEGREE } from '../mechanics/setting-order/timing.ts';
import { arc, spokes, wheel } from './degree-wheel.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { label } from './svg.ts';

const figure = (value: number) =>
  formatNumber(value, 2)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '') || '0';

/** The two contacts with a positive stop, where the pointer stands, and where it should. */
export function topDeadCentre(
  data: {
    readonly afterTop: number;
    readonly beforeTop: number;
    readonly trueReading: number;
    readonly correction: number;
  },
  { id }: DrawnFor,
): Drawing {
  const top = (data.afterTop - data.beforeTop) / 2;
  const reads = `${figure(data.trueReading)}° on both sides`;
  const [way, until] = isPointerOut(data.correction * DEGREE)
    ? [`the pointer is ${figure(Math.abs(data.correction))}° out`, `right, it reads ${reads}`]
    : ['the pointer stands right', `it reads ${reads}`];
  const said = `${way}, ${until}`;
  return {
    id,
    title: 'Two contacts with the stop',
    desc: `The stop was met at ${figure(data.beforeTop)} before TDC and ${figure(data.afterTop)} after it: ${said}.`,
    viewBox: '0 0 320 304',
    svg:
      wheel() +
      arc('draw-outline', 0, data.afterTop, 64) +
      arc('draw-outline', -data.beforeTop, 0, 64) +
      spokes([
        { at: -data.beforeTop, name: 'before', figure: figure(data.beforeTop) },
        { at: data.afterTop, name: 'after', figure: figure(data.afterTop) },
        { at: top, name: 'true top', figure: '', moving: true },
      ]) +
      label(160, 278, way, { anchor: 'middle' }) +
      label(160, 295, until, { anchor: 'middle', soft: true }),
    toScale: true,
    table: {
      caption: 'Readings at the stop, degrees',
      columns: [{ label: 'Side' }, { label: 'Read', number: true }, { label: 'Should read', number: true }],
      rows: [
        { cells: ['Before TDC', figure(data.beforeTop), figure(data.trueReading)] },
        { cells: ['After TDC', figure(data.afterTop), figure(data.trueReading)] },
      ],
      note: `Correction ${figure(data.correction)} degrees: ${said}.`,
    },
  };
}

/** A reading or an event on the wheel. */
interface Mark {
  /** Degrees after TDC. */
  readonly at: number;
  readonly name: string;
  readonly figure: string;
}

const told = ({ name, figure: value }: Mark) => `${name} ${value}`;

/** A centreline between the two things it was found from: equal-lift readings, or events. */
export function centreline(
  data: {
    readonly side: 'intake' | 'exhaust';
    readonly centreline: number;
    readonly card?: number | undefined;
    /** Wheel angles after TDC of the two readings or events, with their names. */
    readonly from: Mark;
    readonly to: Mark;
  },
  { id }: DrawnFor,
): Drawing {
  const before = data.side === 'exhaust';
  const onTheWheel = before ? -data.centreline : data.centreline;
  const words = `${figure(data.centreline)} ${before ? 'before' : 'after'} TDC`;
  const card = data.card;
  return {
    id,
    title: `Centreline of the ${data.side} lobe`,
    desc: `The lobe peaks ${words}, midway between ${told(data.from)} and ${told(data.to)}${card === undefined ? '' : `; the card says ${figure(card)}`}.`,
    viewBox: '0 0 320 292',
    svg:
      wheel() +
      arc('draw-outline', data.from.at, data.to.at, 64) +
      spokes([
        { at: data.from.at, name: data.from.name, figure: data.from.figure },
        { at: data.to.at, name: data.to.name, figure: data.to.figure },
        { at: onTheWheel, name: 'peak', figure: figure(data.centreline), moving: true },
        ...(card === undefined ? [] : [{ at: before ? -card : card, name: 'card', figure: figure(card) }]),
      ]) +
      label(160, 284, 'crank turns clockwise, seen from the front', { anchor: 'middle', soft: true }),
    toScale: true,
    table: {
      caption: 'Degree wheel',
      columns: [{ label: 'What' }, { label: 'Degrees after TDC', number: true }],
      rows: [
        { cells: [told(data.from), figure(data.from.at)] },
        { cells: [told(data.to), figure(data.to.at)] },
        { cells: ['Peak', figure(onTheWheel)] },
        ...(card === undefined ? [] : [{ cells: ['Card', figure(before ? -card : card)] }]),
      ],
    },
  };
}
