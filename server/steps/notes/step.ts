import { newNote } from '../../../shared/schemas/commands.ts';
import { onTheBack } from '../../call/report-parts.ts';
import { defineStep } from '../../call/step.ts';
import { freeForm, stepForm } from '../../call/step-form.ts';
import { strikesWorkings } from '../../call/worked/striking-out.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { finishPromise, keepNote } from '../../records/notes/notes.ts';
import { notesPage } from './notes-page.ts';
import { notesReport } from './report.ts';
import { returnItems } from './takeover.ts';
import { NOTES_TOLD } from './tape-text.ts';

/** An empty date is no date. */
const withoutEmptyDue = (fields: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(fields).filter(([name, text]) => name !== 'due' || text.trim() !== ''));

/** Who does it and by when are kept with a promise alone: beside anything else they would be lost unseen. */
function ofPromiseAlone(kind: string, { owner = '', due = '' }: Readonly<Record<string, string>>) {
  if (kind === 'promise' || (owner.trim() === '' && due.trim() === '')) return undefined;
  return {
    field: 'kind',
    detail: 'must be a promise where it says who does it or by when: pick that, or leave both empty',
  };
}

/** Notes, advice and promises. */
export const notesStep = defineStep({
  name: 'notes',
  key: '0',
  words: {
    title: 'Say what is found, and who does what by when',
    link: 'Notes and promises',
    say: 'This is what we found, this is what we don’t know yet, and this is the next reading. Right?',
    how: 'What was said and promised on this call is here. Add a note if something is wrong or missing.',
    turns: false,
  },
  load: ({ computations }) => computations,
  page: (computations, { context, rejected }) => notesPage(context, computations, rejected),
  forms: [
    stepForm({
      path: '/notes',
      schema: newNote,
      fields: withoutEmptyDue,
      run: async (input, { tx, principal, call, req }) => {
        const lost = ofPromiseAlone(input.kind, req.fields);
        if (lost !== undefined) return { faults: [lost], typed: req.fields };
        await keepNote(tx, principal, call.id, input);
        return { step: 'notes' };
      },
    }),
    freeForm({
      path: '/notes/:noteId/done',
      side: 'desk',
      run: async ({ tx, principal, call, req }) => {
        await finishPromise(tx, principal, call.id, req.params.noteId ?? '');
        return { step: 'notes' };
      },
    }),
  ],
  corrections: [strikesWorkings('notes')],
  told: NOTES_TOLD,
  cautions: () => [],
  report: (_, { notes }) => [{ name: 'notes', ...onTheBack(notesReport(notes)) }],
  takeover: (_, context) => returnItems(context),
  worksheet: () => NO_ROWS,
});
