import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { AssessedExplanation } from '../../mechanics/assessment/assessment.ts';
import type { ExplanationResult } from '../../mechanics/assessment/ratio/compared/explanation.ts';
import { chancesText } from '../../mechanics/explain-readings/words.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';

const SHOWN = 6;

/** A figure stays on one line with its sign. */
export const keptTogether = (text: string): string => text.replaceAll(' %', '\u00a0%');

/** What would have to be true for each explanation, and how likely each is on what was read. */
function explanationsTable({ explanations }: ExplanationResult, shown: number): TableData {
  const chances = chancesText(explanations.map(({ probability }) => probability));
  return {
    caption: 'What would have to be true',
    columns: [{ label: 'It is' }, { label: 'How likely', number: true }],
    rows: explanations.slice(0, shown).map(({ needs }, index) => ({
      cells: [needs, keptTogether(chances[index] ?? '')],
    })),
    note: 'Chances are judged from common practice and what was read; they are questions, not verdicts. Only a person strikes a reading out.',
  };
}

/** The same without a figure, where the answer leaves it open. */
const openTable = (sentences: readonly string[], shown: number): TableData => ({
  caption: 'What would have to be true',
  columns: [{ label: 'It is' }],
  rows: sentences.slice(0, shown).map((needs) => ({ cells: [needs] })),
  note: 'They are questions, not verdicts. Only a person strikes a reading out.',
});

/** The table as far as its chances may be told; nothing where nothing may stand yet. */
export function explainedTable(
  { result, chances, wouldBeTrue }: AssessedExplanation,
  shown = SHOWN,
): TableData | undefined {
  if (chances === 'told' && result !== undefined) return explanationsTable(result, shown);
  return wouldBeTrue.length === 0 ? undefined : openTable(wouldBeTrue, shown);
}

/** What would explain the readings, or why that cannot be computed and what to do about it. */
export function explanationComponents(explanation: AssessedExplanation): Component[] {
  const table = explainedTable(explanation);
  return [
    noticeComponent(keptTogether(explanation.summary)),
    ...(table === undefined ? [] : [tableComponent(table)]),
  ];
}
