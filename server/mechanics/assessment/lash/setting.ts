import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { type SettingOrder, settingOrder } from '../../setting-order/setting-order.ts';
import { DEGREE, windowsOf } from '../../setting-order/timing.ts';
import { readOrder, standsAt } from '../../valve-sheet/orders.ts';
import type { Evidence } from '../evidence.ts';
import type { SettingDetail } from './detail.ts';

/** What is done at each cylinder, whatever the order: the trade's own rule. */
const RULE =
  'Exhaust opening, intake closing: when a cylinder’s exhaust begins to open, set its intake; when its intake is nearly closed, set its exhaust (common practice, no published source).';

const HYDRAULIC =
  'Hydraulic lifters: let each one bleed down before its zero lash is looked for; one that is pumped up reads as no gap.';

/** Degrees of the crank, no finer than anybody turns to by eye. */
const about = (radians: number): number => Math.round(radians / DEGREE / 10) * 10;

/**
 * Where each cylinder is set: the first one's angle is rounded, and the others follow it by whole firings, so that an
 * evenly firing engine goes in even steps.
 */
const stepped = (first: number, index: number, count: number): number =>
  (((about(first) + Math.round((index * 720) / count)) % 720) + 720) % 720;

function twoSaid({ twoPositions, whyNot }: SettingOrder, count: number): string {
  if (twoPositions !== undefined)
    return `Or in two positions, a turn of the crank apart, if it fires evenly, every ${720 / count}°: common practice, no published source. With an uneven firing order, or where a valve in the list is seen to move, go cylinder by cylinder.`;
  if (whyNot === 'no-room')
    return `Two positions would leave less than 20° of the crank to the next lobe with this cam and ${count} cylinders: go cylinder by cylinder.`;
  if (whyNot === 'few-cylinders' && count > 1)
    return `The angles are for cylinders that fire evenly, every ${720 / count}°. With an uneven firing order go by what each cylinder’s own valves do.`;
  return whyNot === 'odd-count' ? 'Two positions a turn apart need an even count of cylinders.' : '';
}

/**
 * Which valve is set when: by the firing order where it is known, with the angles of the card or of an ordinary cam.
 *
 * @param evidence everything on the record, in SI
 * @returns the rule, and rows and positions where the firing order names each cylinder once
 *
 * Validity: one camshaft, four strokes.
 * Source: common practice, no published source.
 */
export function settingDetail({ engine, card }: Evidence): SettingDetail {
  const lifter = isHydraulicLifter(engine.lifter) ? [HYDRAULIC] : [];
  const { firingOrder = '', cylinders } = engine;
  if (firingOrder.trim() === '') return { said: [RULE, ...lifter], lacks: ['the firing order'], rows: [] };
  const order = readOrder(firingOrder, cylinders);
  if (order === undefined)
    return {
      said: [
        RULE,
        ...lifter,
        `The firing order “${firingOrder}” does not name each ${cylinders === undefined ? 'cylinder' : `of the ${cylinders} cylinders`} once.`,
      ],
      lacks: ['a firing order that names each cylinder once'],
      rows: [],
    };
  const { windows, fromCard } = windowsOf(card);
  const found = settingOrder(order, windows);
  const two = twoSaid(found, order.length);
  return {
    said: [
      RULE,
      `The angles are of the crank after ${order[0]} fired, about, ${fromCard ? 'by the card with its ramps' : 'of an ordinary cam'}: look at the valve, not at the angle.`,
      ...lifter,
      ...(two === '' ? [] : [two]),
    ],
    lacks: [],
    rows: found.rows.map(({ cylinder }, index) => ({
      cylinder,
      setIntakeAt: stepped(found.rows[0]?.setIntakeAt ?? 0, index, order.length),
      setExhaustAt: stepped(found.rows[0]?.setExhaustAt ?? 0, index, order.length),
      ...defined({ stands: standsAt(engine.bankOrder, cylinder, order.length) }),
    })),
    ...defined({ twoPositions: found.twoPositions }),
  };
}
