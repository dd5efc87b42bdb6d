import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { openPromises, promiseState } from '../../call/promises.ts';
import { ratioFigure, ratioName } from '../../call/ratio-text.ts';
import { workingsTable } from '../../call/worked/striking-out.ts';
import type { Computations } from '../../call/worked/text.ts';
import type { Note } from '../../records/notes/notes.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { areaField, choiceField, textField } from '../../web/forms/fields.ts';

const LABELS = {
  kind: 'What it is',
  body: 'What was said',
  restsOn: 'The figures or limits it rests on',
  owner: 'Who does it',
  due: 'By when',
};
const KINDS = { note: 'A note', advice: 'Advice given', promise: 'A promise' };

/** The results that stand, for advice to rest on: what it was given on must be on record with it. */
function figuresOf({ assessment }: CallContext): string {
  return assessment.details.setUps
    .flatMap(({ setUp, result }) =>
      result === undefined
        ? []
        : [`${ratioName(setUp.spring)} ${valveName(setUp)} ${ratioFigure(result).text}`],
    )
    .slice(-3)
    .join('; ');
}

function noteForm(context: CallContext): PageForm {
  const desk = context.side === 'desk';
  return {
    name: 'note',
    action: `${context.base}/notes`,
    title: desk ? 'Save a note, advice or a promise' : 'Add a note',
    labels: LABELS,
    initial: { kind: 'note', ...(desk ? { restsOn: figuresOf(context) } : {}) },
    ...(desk ? {} : { hidden: { kind: 'note' } }),
    groups: (shown) => [
      {
        slots: desk
          ? [
              choiceField(shown, 'kind', LABELS.kind, KINDS, { inline: true }),
              areaField(shown, 'body', LABELS.body, { rows: 3 }),
              textField(shown, 'restsOn', LABELS.restsOn, { optional: true }),
              textField(shown, 'owner', LABELS.owner, {
                hint: 'For a promise: one name.',
                optional: true,
              }),
              textField(shown, 'due', LABELS.due, {
                type: 'date',
                hint: 'For a promise: the day it is kept by.',
                optional: true,
              }),
            ]
          : [areaField(shown, 'body', LABELS.body, { rows: 3 })],
      },
    ],
    buttons: [{ label: 'Save it', kind: 'primary', key: 'k' }],
  };
}

function promiseFormComponent(context: CallContext, note: Note): Component {
  const button: ButtonData = { label: 'Mark as done', kind: 'plain' };
  return formComponent(
    {
      name: `done-${note.seq}`,
      action: `${context.base}/notes/${note.id}/done`,
      labels: {},
      groups: () => [],
      buttons: [button],
    },
    undefined,
  );
}

function notesTable(notes: readonly Note[]): TableData {
  return {
    caption: 'Said and promised',
    columns: [
      { label: 'Line' },
      { label: 'What' },
      { label: 'Words' },
      { label: 'Rests on, or whose' },
      { label: 'Who, when' },
    ],
    rows: notes.map((note) => ({
      cells: [
        String(note.seq),
        note.kind,
        note.body,
        note.kind === 'promise' ? promiseState(note) : note.restsOn || '\u2013',
        `${note.by}, ${momentText(note.at)}`,
      ],
    })),
    empty: 'Nothing said or promised yet.',
  };
}

function openPromiseComponent(context: CallContext, note: Note): Component {
  return {
    template: '/pages/call/group',
    data: {
      title: note.body,
      text: `Promised: ${promiseState(note)}`,
      slots: [promiseFormComponent(context, note)],
    },
  };
}

/** Notes, advice and promises of the call. */
export function notesPage(
  context: CallContext,
  computations: Computations,
  rejected: RejectedForm | undefined,
): StepBody {
  const form = noteForm(context);
  const open = openPromises(context.notes);
  return {
    forms: [form],
    slots: [
      formComponent(form, rejected),
      ...(context.side === 'desk' ? open.map((note) => openPromiseComponent(context, note)) : []),
      tableComponent(notesTable(context.notes)),
      ...workingsTable(context, 'notes', computations),
    ],
  };
}
