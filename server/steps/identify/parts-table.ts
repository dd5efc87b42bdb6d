import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { keyOf, subjectSaid, upperFirst } from '../../mechanics/assessment/common/said.ts';
import { tableComponent } from '../../web/components.ts';
import { type PartSeen, partAddress } from './of-part.ts';

const entries = (count: number): string => `${count} ${count === 1 ? 'entry' : 'entries'}`;

/** The answer of a part that is not the one shown, and how many questions wait for it. */
function stateOf({ assessment }: CallContext, { detail, questions }: PartSeen) {
  const key = keyOf(detail.about);
  const said = assessment.headlines.find(({ about, step }) => step === 'identify' && keyOf(about) === key);
  const open = questions.filter(({ answered }) => answered === undefined).length;
  const text = said?.sentence ?? 'nothing is said of it yet';
  return open === 0 ? { text } : { text, why: `${open} ${open === 1 ? 'question' : 'questions'} open` };
}

/** Several parts in the hand: which one is shown, and the way to the others. */
export function partsComponents(
  context: CallContext,
  parts: readonly PartSeen[],
  shown: PartSeen,
): Component[] {
  if (parts.length < 2) return [];
  const data: TableData = {
    caption: 'Parts in the hand',
    columns: [{ label: 'Part' }, { label: 'Read' }, { label: 'What is said of it' }, { label: 'Do' }],
    rows: parts.map((part) => ({
      cells: [
        upperFirst(subjectSaid(part.detail.about)),
        entries(part.standing.length),
        stateOf(context, part),
        part === shown
          ? 'shown below'
          : { text: `Read ${subjectSaid(part.detail.about)}`, href: partAddress(context.base, part) },
      ],
    })),
  };
  return [tableComponent(data)];
}
