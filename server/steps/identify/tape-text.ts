import { asEntered, asTold } from '../../../shared/quantities/as-entered.ts';
import { isPartMark, PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { ifSaid, tellEvents } from '../../call/tell-events.ts';
import { PART_READING_EVENTS } from '../../records/part-readings/events.ts';

interface Read {
  readonly kind: keyof typeof PART_KINDS;
  readonly part: string;
  readonly place: string;
  readonly readAs: string;
  readonly how: string;
}

const of = (part: string) => (part === '' ? '' : `${part}: `);
/** Words that say what they are of, such as `Rings visible`: the name before them would say it twice. */
const sayWhat = ({ kind }: Pick<Read, 'kind'>) => kind === 'rings' || kind === 'tip';
const what = ({ kind, part, place, how, readAs }: Read) =>
  `${of(part)}${sayWhat({ kind }) ? readAs : PART_KINDS[kind]}${ifSaid(', ', asTold(how))}${ifSaid(', ', place)}`;
const value = ({ kind, readAs }: Read) =>
  sayWhat({ kind }) ? {} : { value: isPartMark(kind) ? `“${readAs}”` : asEntered(readAs) };

/** What the events of a part in the hand say on the tape. */
export const PART_TOLD = tellEvents(PART_READING_EVENTS, {
  'part-read': (data) => ({ kind: 'reading', text: what(data), ...value(data) }),
  'part-reading-replaced': (data) => ({
    kind: 'reading',
    text: `${what(data)}, in place of ${data.replaces}`,
    ...value(data),
  }),
  'part-reading-struck': ({ kind, part, replaces, reason }) => ({
    kind: 'note',
    text: `${of(part)}${PART_KINDS[kind]}: ${replaces} struck out, ${reason}`,
  }),
  'part-in-hand-named': ({ name, was, arm }) => ({
    kind: 'note',
    text: `A part in the hand: ${name}${ifSaid(', before that ', was)}${arm === '' ? '' : `; it is the arm ${arm}`}`,
  }),
});
