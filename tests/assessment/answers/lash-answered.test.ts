import { expect, test } from 'vitest';
import { answeredText } from '../../../server/call/answered-text.ts';

/** An answer about the lash is told with the amount that was kept. What it should say is said by no standard. */
const answers = [
  { code: 'set', label: 'Left in, as much as', changes: '', takesValue: true },
  { code: 'as-card', label: 'Yes, the card’s .016 in', changes: '', value: 0.0004064 },
  { code: 'zero', label: 'Taken up to zero', changes: '' },
];
const answered = (answer: string) => ({ answers, answered: { entryId: 'one', answer } });
const value = { readAs: '.012 in' };

test.each([
  ['the label that leads on to an amount has it', 'set', { value }, 'Left in, .012 in'],
  ['it ends by itself where nobody knew how much', 'set', {}, 'Left in'],
  ['words stand beside it', 'set: with the feeler', { value }, 'Left in, “with the feeler”, .012 in'],
  [
    'the card was put right since: what was kept is told',
    'as-card',
    { value },
    'Yes, as on the card, .012 in',
  ],
  ['what was offered, with no amount kept', 'as-card', {}, 'Yes, the card’s .016 in'],
  ['nothing was left in', 'zero', {}, 'Taken up to zero'],
])('%s', (_, answer, kept, said) => {
  expect(answeredText(answered(answer), kept)).toBe(said);
});
