import type { Component } from '../../../views/parts/part.ts';
import type { CallContext } from '../../call/context.ts';
import { armsTable, swapsTable } from './parts-page.ts';

/** Arms with their marks; the swaps where an arm has moved. */
export function armsReport(context: CallContext): Component[] {
  if (context.arms.length === 0) return [];
  const arms = [...context.arms].sort((a, b) => a.name.localeCompare(b.name));
  return [
    armsTable({ ...context, arms }),
    // Where no arm has moved, the table above says where each sits.
    ...(context.placements.length > context.arms.length ? [swapsTable(context)] : []),
  ];
}
