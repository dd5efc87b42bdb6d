import type { Component } from '../../views/parts/part.ts';

/** What is one tap away under its summary; open from the start where something in it came back with a fault. */
export const foldComponent = (
  id: string,
  summary: string,
  slots: readonly Component[],
  open = false,
): Component => ({
  template: '/pages/call/fold',
  data: { id, summary, slots, ...(open ? { open } : {}) },
});
