import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { Slot } from '../../../views/parts/part.ts';
import { areaField, choiceField, textField } from '../../forms/fields.ts';
import type { Note } from '../../notes/notes.ts';
import { ratioFigure, ratioName } from '../../readings/pages/ratio-words.ts';
import { type Again, formSlot, type PageForm, type StepBody } from './forms-on-page.ts';
import { momentText } from './moments.ts';
import { type Sight, valveName } from './sight.ts';

const LABELS = {
  kind: 'What it is',
  body: 'What was said',
  restsOn: 'The figures or limits it rests on',
  owner: 'Who does it',
  due: 'By when',
};
const KINDS = { note: 'A note', advice: 'Advice given', promise: 'A promise' };

/** The results that stand, for advice to rest on: what it was given on must be on record with it. */
function figuresOf({ ratios }: Sight): string {
  return ratios
    .flatMap(({ setUp, result }) =>
      result === undefined
        ? []
        : [`${ratioName(setUp.method.spring)} ${valveName(setUp)} ${ratioFigure(result).text}`],
    )
    .slice(-3)
    .join('; ');
}

export function noteForm(sight: Sight): PageForm {
  const desk = sight.side === 'desk';
  return {
    name: 'note',
    action: `${sight.base}/notes`,
    title: desk ? 'Keep a note, advice or a promise' : 'Add a note',
    labels: LABELS,
    initial: { kind: 'note', ...(desk ? { restsOn: figuresOf(sight) } : {}) },
    ...(desk ? {} : { hidden: { kind: 'note' } }),
    groups: (shown) => [
      {
        slots: desk
          ? [
              choiceField(shown, 'kind', LABELS.kind, KINDS, { inline: true }),
              areaField(shown, 'body', LABELS.body, { rows: 3 }),
              textField(shown, 'restsOn', LABELS.restsOn, { optional: true }),
              textField(shown, 'owner', LABELS.owner, { hint: 'For a promise: one name.', optional: true }),
              textField(shown, 'due', LABELS.due, {
                hint: 'For a promise: a date such as 2026-11-27.',
                optional: true,
              }),
            ]
          : [areaField(shown, 'body', LABELS.body, { rows: 3 })],
      },
    ],
    buttons: [{ label: 'Keep it', kind: 'primary', key: 'k' }],
  };
}

function promiseForm(sight: Sight, note: Note): Slot {
  const button: ButtonData = { label: 'It is done', kind: 'plain' };
  return formSlot(
    {
      name: `done-${note.seq}`,
      action: `${sight.base}/notes/${note.id}/done`,
      labels: {},
      groups: () => [],
      buttons: [button],
    },
    undefined,
  );
}

/** Whose it is, by when, and whether it is done. */
export function promiseState(note: Note): string {
  if (note.doneAt !== undefined) return `done ${momentText(note.doneAt)}`;
  return `${note.owner || 'no owner named'}${note.due === undefined ? ', no date' : `, by ${note.due}`}`;
}

export function notesTable(notes: readonly Note[]): Slot {
  return {
    template: '/parts/table',
    data: {
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
    },
  };
}

function openPromise(sight: Sight, note: Note): Slot {
  return {
    template: '/pages/call/group',
    data: {
      title: note.body,
      text: `Promised: ${promiseState(note)}`,
      slots: [promiseForm(sight, note)],
    },
  };
}

/** Notes, advice and promises of the call. */
export function notesStep(sight: Sight, again: Again | undefined): StepBody {
  const form = noteForm(sight);
  const open = sight.notes.filter((note) => note.kind === 'promise' && note.doneAt === undefined);
  return {
    forms: [form],
    slots: [
      formSlot(form, again),
      ...(sight.side === 'desk' ? open.map((note) => openPromise(sight, note)) : []),
      notesTable(sight.notes),
    ],
  };
}
