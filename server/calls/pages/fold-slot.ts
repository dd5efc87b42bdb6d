import type { Slot } from '../../../views/parts/part.ts';

/** What stands one tap away under its summary; open from the start where something in it came back with a fault. */
export const foldSlot = (id: string, summary: string, slots: readonly Slot[], open = false): Slot => ({
  template: '/pages/call/fold',
  data: { id, summary, slots, ...(open ? { open } : {}) },
});
