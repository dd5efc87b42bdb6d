import type { Component } from '../../../views/parts/components.ts';
import type { Drawing } from '../../drawings/drawing.ts';

export function drawingComponents(drawings: readonly Drawing[]): Component[] {
  const slots = drawings.map((data): Component => ({ template: '/parts/drawing', data }));
  return slots.length > 1 ? [{ template: '/pages/call/side-by-side', data: { slots } }] : slots;
}

interface Arranged {
  readonly drawings: readonly Component[];
  readonly entry: readonly Component[];
  /** What the newest entry says or asks. */
  readonly top: readonly Component[];
  /** All else on record. */
  readonly rest: readonly Component[];
  /** Something was kept already. */
  readonly begun: boolean;
}

/** The entry comes first; once something is kept, what it says goes before the drawing of how it is measured. */
export function arrangedComponents({ drawings, entry, top, rest, begun }: Arranged): Component[] {
  return begun ? [...entry, ...top, ...rest, ...drawings] : [...entry, ...drawings, ...top, ...rest];
}
