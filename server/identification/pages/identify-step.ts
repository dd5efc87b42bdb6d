import { isPartFeature, isPartSize } from '../../../shared/schemas/part-words.ts';
import type { Slot } from '../../../views/parts/part.ts';
import { foldSlot } from '../../calls/pages/fold-slot.ts';
import { type Again, formSlot, type StepBody } from '../../calls/pages/forms-on-page.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import { type AskedOfPart, partDrawing } from '../../drawings/part.ts';
import type { PageRequest } from '../../http/page-route.ts';
import type { PartIdentification } from '../identification.ts';
import { candidatesSlot, followingSlots, nextSlot } from './answers.ts';
import { HOW_TO } from './how-to.ts';
import { marksForm, partForm, partTitle } from './part-forms.ts';
import { readingsTable } from './readings-table.ts';

const HOLE = 'hole-across-trunnion';

/** What is asked now: what was picked, what came back with a fault, the hole to begin with, or what says most. */
function askedNow(given: PageRequest, found: PartIdentification, again: Again | undefined): AskedOfPart {
  const picked = (again?.typed.form === 'part' ? again.typed.kind : undefined) ?? given.query.ask ?? '';
  if (isPartSize(picked) || isPartFeature(picked)) return picked;
  const sized = found.standing.filter(({ kind }) => isPartSize(kind) || isPartFeature(kind));
  // One hole alone may be oval: it is read again a quarter turn round before anything else.
  if (sized.length === 1 && sized[0]?.kind === HOLE) return HOLE;
  return sized.length > 0 ? (found.offers[0]?.kind ?? HOLE) : HOLE;
}

function emptyCatalogue(sight: Sight): Slot {
  const link =
    sight.side === 'desk' ? { link: { href: '/catalogue/load', label: 'Load part families' } } : {};
  const text =
    'The shop has no catalogue yet, so there is nothing to set the part against. Readings are kept.';
  return { template: '/parts/notice', data: { text, ...link } };
}

/** What was read and the marks: open at the desk, one tap away at the bench. */
function recordSlots(
  sight: Sight,
  found: PartIdentification,
  marks: Slot | undefined,
  marksOpen: boolean,
): Slot[] {
  const table = readingsTable(sight, found);
  if (sight.side === 'desk') return marks === undefined ? [table] : [table, marks];
  const count = found.standing.length;
  return [
    foldSlot('read-so-far', `What is read so far: ${count} ${count === 1 ? 'entry' : 'entries'}`, [table]),
    ...(marks === undefined
      ? []
      : [foldSlot('marks-fold', 'Marks on the part and the box', [marks], marksOpen)]),
  ];
}

/** Identifying a rocker: one thing asked at a time, and what it may be from what is read so far. */
export function identifyStep(
  sight: Sight,
  given: PageRequest,
  found: PartIdentification,
  again: Again | undefined,
): StepBody {
  const asked = askedNow(given, found, again);
  const words = HOW_TO[asked];
  const forms = sight.call.held ? [] : [partForm(sight, asked), marksForm(sight)];
  const [part, marks] = forms.map((form) => formSlot(form, again));
  const begun = found.standing.some(({ kind }) => isPartSize(kind) || isPartFeature(kind));
  const drawing: Slot = { template: '/parts/drawing', data: partDrawing('part-drawing', asked) };
  const entry = part === undefined ? [] : [part];
  const ask = sight.side === 'desk' ? `Ask: “${words.say}” ${words.how}` : words.how;
  return {
    forms,
    slots: [
      { template: '/pages/call/heading', data: { text: partTitle(asked) } },
      { template: '/parts/notice', data: { text: ask } },
      // At the desk the entry has the focus and stands first; at the bench the drawing does.
      ...(sight.side === 'desk' ? [...entry, drawing] : [drawing, ...entry]),
      ...(found.families === 0 ? [emptyCatalogue(sight)] : []),
      ...(begun && found.families > 0 ? [nextSlot(sight, found), candidatesSlot(sight, found)] : []),
      ...followingSlots(found),
      ...recordSlots(sight, found, marks, again?.typed.form === 'marks'),
    ],
  };
}
