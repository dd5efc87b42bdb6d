import { type CallContext, valveName } from '../../call/context.ts';
import type { TakeoverItem } from '../../call/takeover-items.ts';
import { movesOf } from '../../records/arms/placements.ts';

const mark = (text: string) => (text === '' ? 'not said' : `“${text}”`);

/** Marks word for word, which arm is on which valve now, and the swaps in order. */
export function markItems({ arms, now, placements }: CallContext): TakeoverItem[] {
  const seats = new Map(now.map((placement) => [placement.armId, valveName(placement)]));
  const names = new Map(arms.map((arm) => [arm.id, arm.name]));
  const marks = [...arms]
    .sort((a, b) => a.name.localeCompare(b.name))
    .map(
      (arm): TakeoverItem => ({
        card: 'marks',
        label: `${arm.name}, ${seats.get(arm.id) === undefined ? 'on no valve' : `on ${seats.get(arm.id)}`}:`,
        text: `ratio stamp ${mark(arm.ratioStamp)}, other number ${mark(arm.otherNumber)}, box label ${mark(arm.boxLabel)}`,
      }),
    );
  const nameOf = (id: string) => names.get(id) ?? 'an arm';
  const swaps = movesOf(placements).map(({ placement, from, inPlaceOf }): TakeoverItem => {
    const left = from === undefined ? '' : `, from ${valveName(from)}`;
    const instead = inPlaceOf === undefined ? '' : `, in place of ${nameOf(inPlaceOf)}`;
    return {
      card: 'swaps',
      label: `${placement.seq}`,
      text: `${nameOf(placement.armId)} on ${valveName(placement)}${left}${instead}`,
      ...(placement.reason === '' ? {} : { note: placement.reason }),
    };
  });
  return [...marks, ...swaps];
}
