import type { Component } from '../../../views/parts/components.ts';
import type { Drawing } from '../../drawings/drawing.ts';
import type { CallContext } from '../context.ts';
import { foldComponent } from '../fold.ts';

export function drawingComponents(drawings: readonly Drawing[]): Component[] {
  const slots = drawings.map((data): Component => ({ template: '/parts/drawing', data }));
  return slots.length > 1 ? [{ template: '/pages/call/side-by-side', data: { slots } }] : slots;
}

interface Arranged {
  readonly side: CallContext['side'];
  readonly drawings: readonly Component[];
  readonly entry: readonly Component[];
  /** What the newest entry says or asks. */
  readonly top: readonly Component[];
  /** All else on record. */
  readonly rest: readonly Component[];
  /** The fields go by figures of the drawing: on a phone it is one tap away above them. */
  readonly drawingFirst?: boolean;
  /** Something was kept already. */
  readonly begun: boolean;
}

/**
 * The entry comes first, at the desk with the drawing of how it is measured beside it; at the bench, once something is kept,
 * what it says goes before the drawing.
 */
export function arrangedComponents({
  side,
  drawings,
  entry,
  top,
  rest,
  begun,
  drawingFirst = false,
}: Arranged): Component[] {
  if (side === 'desk' && entry.length > 0 && drawings.length > 0)
    return [{ template: '/pages/call/entry-beside', data: { entry, beside: drawings } }, ...top, ...rest];
  if (drawingFirst && entry.length > 0)
    return [
      foldComponent('asked-drawing', 'The drawing that the fields go by', drawings),
      ...entry,
      ...top,
      ...rest,
    ];
  return begun ? [...entry, ...top, ...rest, ...drawings] : [...entry, ...drawings, ...top, ...rest];
}
