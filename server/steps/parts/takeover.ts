import { type CallContext, valveName } from '../../call/context.ts';
import type { TakeoverItem } from '../../call/takeover-items.ts';

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
  if (placements.length <= arms.length) return marks;
  const swaps = placements.map(
    (each): TakeoverItem => ({
      card: 'swaps',
      label: `${each.seq}`,
      text: `${names.get(each.armId) ?? 'an arm'} on ${valveName(each)}`,
      ...(each.reason === '' ? {} : { note: each.reason }),
    }),
  );
  return [...marks, ...swaps];
}
