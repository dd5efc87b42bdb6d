import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type StepBody } from '../../call/forms.ts';
import { stepHeadlines } from '../../call/headline.ts';
import { questionCards } from '../../call/question-form.ts';
import type { StepPageInput } from '../../call/step.ts';
import { partDrawing } from '../../drawings/part.ts';
import { catalogueOf } from '../../records/whole-build/build-record.ts';
import { drawingComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import { candidatesComponent, tellComponent } from './answers.ts';
import { askedNow } from './asked-now.ts';
import { followingComponents } from './following.ts';
import { HOW_TO } from './how-to.ts';
import type { PartSeen } from './of-part.ts';
import { marksForm, partForm, partTitle } from './part-forms.ts';
import { readingsTable } from './readings-table.ts';

const emptyCatalogue = ({ side }: CallContext): Component =>
  noticeComponent(
    'The shop has no catalogue yet, so there is nothing to set the part against. Readings are kept.',
    side === 'desk' ? { link: { href: '/catalogue/load', label: 'Load part families' } } : {},
  );

/** What was read and the marks: open at the desk, one tap away at the bench. */
function recordComponents(
  context: CallContext,
  seen: PartSeen,
  marks: Component | undefined,
  marksOpen: boolean,
): Component[] {
  const table = tableComponent(readingsTable(context, seen));
  if (context.side === 'desk') return marks === undefined ? [table] : [table, marks];
  const count = seen.standing.length;
  return [
    foldComponent('read-so-far', `What is read so far: ${count} ${count === 1 ? 'entry' : 'entries'}`, [
      table,
    ]),
    ...(marks === undefined
      ? []
      : [foldComponent('marks-fold', 'Marks on the part and the box', [marks], marksOpen)]),
  ];
}

/** Identifying a rocker: one thing asked at a time, and what it may be from what is read so far. */
export function identifyPage(seen: PartSeen, { context, req, rejected }: StepPageInput): StepBody {
  const asked = askedNow(req, context, seen, rejected);
  const words = HOW_TO[asked];
  // The part is off the engine: a stop closes nothing of it.
  const forms = [partForm(context, asked), marksForm(context)];
  const [part, marks] = forms.map((form) => formComponent(form, rejected));
  const drawing = drawingComponent(partDrawing('part-drawing', asked));
  const entry = part === undefined ? [] : [part];
  const ask = context.side === 'desk' ? `Ask: “${words.say}” ${words.how}` : words.how;
  const cards = questionCards(context, seen.questions, rejected);
  const { ranking } = seen;
  return {
    forms: [...forms, ...cards.forms],
    slots: [
      { template: '/pages/call/heading', data: { text: partTitle(asked) } },
      noticeComponent(ask),
      // At the desk the entry has the focus and stands first; at the bench the drawing does.
      ...(context.side === 'desk' ? [...entry, drawing] : [drawing, ...entry]),
      ...(catalogueOf(context.record).length === 0 ? [emptyCatalogue(context)] : []),
      ...stepHeadlines(context, 'identify'),
      ...(ranking === undefined ? [] : [tellComponent(context, ranking)]),
      ...cards.slots,
      ...(ranking === undefined ? [] : [candidatesComponent(context, ranking)]),
      ...followingComponents(seen),
      ...recordComponents(context, seen, marks, rejected?.typed.form === 'marks'),
    ],
  };
}
