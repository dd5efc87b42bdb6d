import type { CallContext } from '../../call/context.ts';
import { openPromises } from '../../call/promises.ts';
import { NOT_YET, type TakeoverItem } from '../../call/takeover-items.ts';

/** The date that was promised; where a returned part lies is told in a note. */
export const returnItems = ({ notes }: CallContext): TakeoverItem[] => [
  {
    card: 'of-goal',
    label: 'Date promised:',
    text:
      openPromises(notes)
        .map(({ due, body }) => `${due ?? 'no date'}, ${body}`)
        .join('; ') || NOT_YET,
  },
  { card: 'of-goal', label: 'Where the part lies:', text: 'as the notes say' },
];
