import type { Component } from '../../../views/parts/part.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { answerComponents } from '../../compute-forms/answer/answer-components.ts';
import { drawingsOf } from '../../drawings/registry.ts';
import type { Working } from '../../records/workings/workings.ts';
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

/** What was kept last of a computation: who and when, the drawing to scale, and the answer. */
export function keptComponents(working: Working, each: Registered): Component[] {
  if (!isAnswer(working.answer)) return [];
  const answer = working.answer;
  const drawings = drawingsOf(each, working.inputs, answer.result, 'inch').map((data) => ({
    template: '/parts/drawing',
    data,
  }));
  const facts: Component = {
    template: '/parts/facts',
    data: {
      block: true,
      items: [
        { label: 'Kept', value: each.title, note: `line ${working.seq}` },
        { label: 'Who, when', value: `${working.by}, ${momentText(working.at)}` },
        { label: 'Build revision', value: String(working.revision) },
      ],
    },
  };
  const cautions = answer.cautions.map((text) => ({
    template: '/parts/notice',
    data: { kind: 'caution', text },
  }));
  return [
    facts,
    ...drawings,
    ...answerComponents(each, answer, { uncertainty: 0, limitSource: 'the default of the limits table' }),
    ...cautions,
  ];
}
