import { ifSaid, tellEvents } from '../../call/tell-events.ts';
import { NOTE_EVENTS } from '../../records/notes/events.ts';
import { pickedDayText } from '../../web/dates.ts';

/** What notes, advice and promises say on the tape. */
export const NOTES_TOLD = tellEvents(NOTE_EVENTS, {
  'note-kept': ({ body }) => ({ kind: 'note', text: body }),
  'advice-kept': ({ body, restsOn }) => ({
    kind: 'note',
    text: `Advice: ${body}${ifSaid(' Rests on: ', restsOn)}`,
  }),
  'promise-kept': ({ body, owner, due }) => ({
    kind: 'promise',
    text: body,
    due: `${owner || 'no owner named'}${ifSaid(', by ', due === undefined || due === '' ? '' : pickedDayText(due, new Date()))}`,
  }),
  'promise-done': ({ body }) => ({ kind: 'note', text: `Promise kept: ${body}` }),
});
