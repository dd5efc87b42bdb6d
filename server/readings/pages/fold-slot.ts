import type { Slot } from '../../../views/parts/part.ts';

/** What stands one tap away under its summary. */
export const foldSlot = (id: string, summary: string, slots: readonly Slot[]): Slot => ({
  template: '/pages/call/fold',
  data: { id, summary, slots },
});
