import { isPartMark, PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { ifSaid, tellEvents } from '../../call/tell-events.ts';
import { PART_READING_EVENTS } from '../../records/part-readings/events.ts';

interface Read {
  readonly kind: keyof typeof PART_KINDS;
  readonly place: string;
  readonly readAs: string;
}

const what = ({ kind, place }: Read) => `${PART_KINDS[kind]}${ifSaid(', ', place)}`;
const value = ({ kind, readAs }: Read) => (isPartMark(kind) ? `“${readAs}”` : readAs);

/** What the events of a part in the hand say on the tape. */
export const PART_TOLD = tellEvents(PART_READING_EVENTS, {
  'part-read': (data) => ({ kind: 'reading', text: what(data), value: value(data) }),
  'part-reading-replaced': (data) => ({
    kind: 'reading',
    text: `${what(data)}, in place of ${data.replaces}`,
    value: value(data),
  }),
  'part-reading-struck': ({ kind, replaces, reason }) => ({
    kind: 'note',
    text: `${PART_KINDS[kind]}: ${replaces} struck out, ${reason}`,
  }),
});
