import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { questionsOf, questionTexts } from '../../call/question-form.ts';
import { saidComponents } from '../../call/report-parts.ts';
import { movesOf } from '../../records/arms/placements.ts';
import { tableComponent } from '../../web/components.ts';
import { armsTable, swapsTable } from './parts-page.ts';

/** Arms with their marks; the swaps where an arm has moved. */
export function armsReport(context: CallContext): Component[] {
  if (context.arms.length === 0) return [];
  const arms = [...context.arms].sort((a, b) => a.name.localeCompare(b.name));
  return [
    tableComponent(armsTable({ ...context, arms })),
    // Where no arm has moved, the table above says where each sits.
    ...(movesOf(context.placements).length > 0 ? [tableComponent(swapsTable(context))] : []),
    ...saidComponents('It asks', questionTexts(questionsOf(context, 'parts'))),
  ];
}
