import type { Component } from '../../../views/parts/components.ts';
import type { Drawing } from '../../drawings/drawing.ts';
import type { CallContext } from '../context.ts';

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

/**
 * At the desk the entry has the focus and comes first, and once something is kept its answer goes before the drawing
 * of how it is measured. At the bench the newest answer comes first, then where the tool goes, then the entry.
 */
export function arrangedComponents(
  context: CallContext,
  { drawings, entry, top, rest, begun }: Arranged,
): Component[] {
  if (context.side === 'bench') return [...top, ...drawings, ...entry, ...rest];
  return begun ? [...entry, ...top, ...rest, ...drawings] : [...entry, ...drawings, ...top, ...rest];
}
