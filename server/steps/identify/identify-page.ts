import { isPartFeature, isPartSize } from '../../../shared/schemas/part-words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { PartIdentification } from '../../assessment/identification/identification.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import type { StepPageInput } from '../../call/step.ts';
import { type AskedOfPart, partDrawing } from '../../drawings/part.ts';
import { tableComponent } from '../../web/components.ts';
import type { PageAsked } from '../../web/page-route.ts';
import { candidatesComponent, followingComponents, nextComponent } from './answers.ts';
import { HOW_TO } from './how-to.ts';
import { marksForm, partForm, partTitle } from './part-forms.ts';
import { readingsTable } from './readings-table.ts';

const HOLE = 'hole-across-trunnion';

/** What is asked now: what was picked, what came back with a fault, the hole to begin with, or what says most. */
function askedNow(
  req: PageAsked,
  found: PartIdentification,
  rejected: RejectedForm | undefined,
): AskedOfPart {
  const picked = (rejected?.typed.form === 'part' ? rejected.typed.kind : undefined) ?? req.query.ask ?? '';
  if (isPartSize(picked) || isPartFeature(picked)) return picked;
  const sized = found.standing.filter(({ kind }) => isPartSize(kind) || isPartFeature(kind));
  // One hole alone may be oval: it is read again a quarter turn round before anything else.
  if (sized.length === 1 && sized[0]?.kind === HOLE) return HOLE;
  return sized.length > 0 ? (found.offers[0]?.kind ?? HOLE) : HOLE;
}

function emptyCatalogueComponent(context: CallContext): Component {
  const link =
    context.side === 'desk' ? { link: { href: '/catalogue/load', label: 'Load part families' } } : {};
  const text =
    'The shop has no catalogue yet, so there is nothing to set the part against. Readings are kept.';
  return { template: '/parts/notice', data: { text, ...link } };
}

/** What was read and the marks: open at the desk, one tap away at the bench. */
function recordComponents(
  context: CallContext,
  found: PartIdentification,
  marks: Component | undefined,
  marksOpen: boolean,
): Component[] {
  const table = tableComponent(readingsTable(context, found));
  if (context.side === 'desk') return marks === undefined ? [table] : [table, marks];
  const count = found.standing.length;
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
export function identifyPage(found: PartIdentification, { context, req, rejected }: StepPageInput): StepBody {
  const asked = askedNow(req, found, rejected);
  const words = HOW_TO[asked];
  const forms = context.call.held ? [] : [partForm(context, asked), marksForm(context)];
  const [part, marks] = forms.map((form) => formComponent(form, rejected));
  const begun = found.standing.some(({ kind }) => isPartSize(kind) || isPartFeature(kind));
  const drawing: Component = { template: '/parts/drawing', data: partDrawing('part-drawing', asked) };
  const entry = part === undefined ? [] : [part];
  const ask = context.side === 'desk' ? `Ask: “${words.say}” ${words.how}` : words.how;
  return {
    forms,
    slots: [
      { template: '/pages/call/heading', data: { text: partTitle(asked) } },
      { template: '/parts/notice', data: { text: ask } },
      // At the desk the entry has the focus and stands first; at the bench the drawing does.
      ...(context.side === 'desk' ? [...entry, drawing] : [drawing, ...entry]),
      ...(found.families === 0 ? [emptyCatalogueComponent(context)] : []),
      ...(begun && found.families > 0
        ? [nextComponent(context, found), candidatesComponent(context, found)]
        : []),
      ...followingComponents(found),
      ...recordComponents(context, found, marks, rejected?.typed.form === 'marks'),
    ],
  };
}
