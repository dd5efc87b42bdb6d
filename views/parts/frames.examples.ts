import type { Component, ComponentName, ComponentOf } from './components.ts';
import { dial } from './dial.examples.ts';
import { empty } from './empty.examples.ts';
import { callFacts } from './facts.examples.ts';
import { field } from './field.examples.ts';
import type { BuilderFrame, DeskFrame, PlainFrame, ReportFrame } from './frames.ts';
import { gapBar } from './gap-bar.examples.ts';
import { hold } from './hold.examples.ts';
import { missingOnCall } from './missing.examples.ts';
import { notice } from './notice.examples.ts';
import type { Part } from './part.ts';
import { question } from './question.examples.ts';
import { result } from './result.examples.ts';
import { stepHeader } from './step-header.examples.ts';
import { table } from './table.examples.ts';
import { tapeLines } from './tape-line.examples.ts';

/** The nth example of a part, to be set into a frame. */
function example<Name extends ComponentName>(part: Part<Name>, index: number): ComponentOf<Name> {
  const found = part.examples[index];
  if (!found)
    throw new RangeError(`Part ${part.name} has ${part.examples.length} examples, asked for ${index}`);
  return { template: part.template, data: found.data };
}

const keep: Component = {
  template: '/parts/button',
  data: { label: 'Save reading', kind: 'primary', key: 'k' },
};
const tape = { id: 'tape', lines: tapeLines };

const desk: DeskFrame = {
  missing: missingOnCall,
  step: [
    example(stepHeader, 0),
    example(notice, 0),
    example(field, 1),
    keep,
    example(result, 0),
    example(question, 0),
  ],
  tape,
};

const heldDesk: DeskFrame = {
  missing: { id: 'missing-none', needs: [] },
  step: [example(stepHeader, 0)],
  tape: { id: 'tape', lines: [] },
  ...(hold.examples[0] ? { hold: hold.examples[0].data } : {}),
};

const bench: BuilderFrame = {
  step: [example(stepHeader, 1), example(dial, 0), example(notice, 0), example(field, 2), keep],
  tape,
};

const report: ReportFrame = {
  title: 'Light ratio and gaps, cylinder 5',
  facts: callFacts,
  sections: [
    example(result, 0),
    example(table, 0),
    example(gapBar, 0),
    example(gapBar, 1),
    example(notice, 0),
  ],
  behind: [example(table, 0)],
  tape,
};

const plain: PlainFrame = {
  title: 'Calls',
  intro: 'Open calls first, the oldest promise at the top.',
  sections: [example(empty, 0)],
};

export const frames = [
  { name: 'desk', side: 'desk', template: '/parts/frame-desk', data: desk },
  { name: 'held', side: 'desk', template: '/parts/frame-desk', data: heldDesk },
  { name: 'builder', side: 'builder', template: '/parts/frame-builder', data: bench },
  { name: 'report', side: 'open', template: '/parts/frame-report', data: report },
  { name: 'plain', side: 'desk', template: '/parts/frame-plain', data: plain },
] as const;
