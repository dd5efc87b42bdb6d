import type { Component } from '../../../views/parts/components.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { answerComponents } from '../../compute-forms/answer/answer-components.ts';
import { drawingsOf } from '../../drawings/registry.ts';
import type { Working } from '../../records/workings/workings.ts';
import { cautionComponent, drawingComponent, factsComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';

function isAnswer(value: unknown): value is Answer {
  return (
    typeof value === 'object' &&
    value !== null &&
    'result' in value &&
    'assumptions' in value &&
    'cautions' in value
  );
}

/** What was kept last of a computation: who and when, the drawing to scale, the answer, and its cautions if asked. */
export function keptComponents(working: Working, each: Registered, cautions: boolean): Component[] {
  if (!isAnswer(working.answer)) return [];
  const answer = working.answer;
  const facts = factsComponent({
    block: true,
    items: [
      { label: 'Kept', value: each.title, note: `line ${working.seq}` },
      { label: 'Who, when', value: `${working.by}, ${momentText(working.at)}` },
      { label: 'Build revision', value: String(working.revision) },
    ],
  });
  return [
    facts,
    ...drawingsOf(each, working.inputs, answer.result, 'inch').map(drawingComponent),
    ...answerComponents(each, answer, { uncertainty: 0, limitSource: 'the default of the limits table' }),
    ...(cautions ? answer.cautions.map(cautionComponent) : []),
  ];
}
