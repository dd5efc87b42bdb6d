import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { sentenceComponents, stepHeadlines } from '../../call/headline.ts';
import { oneAtATime, questionCards } from '../../call/question-form.ts';
import type { StepPageInput } from '../../call/step.ts';
import { keyOf } from '../../mechanics/assessment/common/said.ts';
import type { RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { catalogueOf } from '../../records/whole-build/build-record.ts';
import { drawingComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import { candidatesComponent, tellComponents } from './answers.ts';
import { askedDrawing } from './asked-drawing.ts';
import { askedNow, pickedIn } from './asked-now.ts';
import { followingComponents } from './following.ts';
import { addPartForm, namePartForm } from './hand-part-forms.ts';
import { HOW_TO } from './how-to.ts';
import { impliedComponents } from './implied.ts';
import { isMark, type PartSeen, partMeant } from './of-part.ts';
import { ordinaryTable } from './ordinary-table.ts';
import { marksForm, partForm, partTitle } from './part-forms.ts';
import { partsComponents } from './parts-table.ts';
import { readingsTable } from './readings-table.ts';

const emptyCatalogue = ({ side }: CallContext): Component =>
  noticeComponent(
    'The shop has no catalogue yet, so there is nothing to set the part against. Readings are kept.',
    side === 'desk' ? { link: { href: '/catalogue/load', label: 'Load part families' } } : {},
  );

/** Open at the desk; on a phone, where the answer stands above, one tap away. */
const tapAway = (
  { side }: CallContext,
  id: string,
  summary: string,
  slots: readonly Component[],
): readonly Component[] =>
  side === 'desk' || slots.length === 0 ? slots : [foldComponent(id, summary, slots)];

/** Where no family is named no order of likelihood is told either. */
const rankedTitle = ({ noneOfThese }: RankingDetail): string =>
  noneOfThese === undefined
    ? 'Families that what is read leaves open'
    : 'What it may be, the likeliest first';

/** Short answers stand side by side at the desk. */
const inPairs = ({ side }: CallContext, slots: readonly Component[]): readonly Component[] =>
  side === 'desk' && slots.length > 1 ? [{ template: '/pages/call/side-by-side', data: { slots } }] : slots;

/** What was read, and the marks: one tap away. */
function recordComponents(
  context: CallContext,
  seen: PartSeen,
  marks: PageForm,
  rejected: RejectedForm | undefined,
): Component[] {
  const table = tableComponent(readingsTable(context, seen));
  const form = formComponent(marks, rejected);
  const count = seen.standing.length;
  // At the desk the marks are asked first, each word for word.
  const asksMarks =
    rejected?.typed.form === marks.name || (context.side === 'desk' && !seen.standing.some(isMark));
  return [
    foldComponent('read-so-far', `What is read so far: ${count} ${count === 1 ? 'entry' : 'entries'}`, [
      table,
    ]),
    foldComponent('marks-fold', 'Marks on the part and the box', [form], asksMarks),
  ];
}

/** Identifying a rocker: one thing asked at a time, and what it may be from what is read so far. */
export function identifyPage(
  parts: readonly PartSeen[],
  { context, req, rejected }: StepPageInput,
): StepBody {
  const seen = partMeant(parts, rejected?.typed.partId ?? req.query.part);
  if (seen === undefined) throw new Error('a build has at least one part in the hand');
  const asked = askedNow(req, context, seen, rejected);
  const words = HOW_TO[asked];
  // The part is off the engine: a stop closes nothing of it.
  const [part, marks] = [partForm(context, seen, asked), marksForm(context, seen)];
  const others = [addPartForm(context), namePartForm(context, seen)];
  const drawing = drawingComponent(askedDrawing('part-drawing', asked));
  const entry = formComponent(part, rejected);
  const ask = context.side === 'desk' ? `Ask: “${words.say}” ${inSpoken(words.how)}` : inSpoken(words.how);
  const cards = questionCards(context, seen.questions, rejected);
  const { ranking, detail } = seen;
  const ordinary = ordinaryTable(detail);
  return {
    shows: new URLSearchParams({
      ask: asked,
      ...(seen.detail.about.partId === undefined ? {} : { part: seen.detail.about.partId }),
    }).toString(),
    forms: [part, marks, ...others, ...cards.forms],
    slots: [
      ...partsComponents(context, parts, seen),
      { template: '/pages/call/heading', data: { text: partTitle(asked) } },
      noticeComponent(ask),
      { template: '/pages/call/side-by-side', data: { slots: [entry, drawing] } },
      ...(catalogueOf(context.record).length === 0 ? [emptyCatalogue(context)] : []),
      ...stepHeadlines(context, 'identify', keyOf(detail.about)),
      ...(detail.arm === undefined ? [] : sentenceComponents([{ sentence: detail.arm.sentence, more: [] }])),
      ...(ranking === undefined
        ? []
        : tellComponents(context, seen, ranking, {
            kind: asked,
            picked: pickedIn(req, rejected) !== undefined,
          })),
      ...oneAtATime(cards),
      ...(ranking === undefined
        ? []
        : tapAway(context, 'ranked', rankedTitle(ranking), [
            candidatesComponent(context, ranking),
            ...impliedComponents(ranking),
          ])),
      ...tapAway(
        context,
        'following',
        'Fastener, cover and ratio by its sizes',
        inPairs(context, followingComponents(context, seen)),
      ),
      ...(ordinary === undefined
        ? []
        : [foldComponent('ordinary', 'Against ordinary sizes', [tableComponent(ordinary)])]),
      ...recordComponents(context, seen, marks, rejected),
      foldComponent(
        'parts-fold',
        'Other parts in the hand, and what this one is called',
        others.map((form) => formComponent(form, rejected)),
        others.some(({ name }) => name === rejected?.typed.form),
      ),
    ],
  };
}
