import { asItIs, type ShortAdvice, toSay, toTurn } from '../../tip-mark/advice-short.ts';
import type { MarkAsked } from '../../tip-mark/types.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';

/** One answer to a question of a mark, with what is done then. */
export interface MarkAnswer extends AnswerChoice {
  /** Left out where what is done goes on by the marks themselves. */
  readonly follows?: ShortAdvice;
  /**
   * The marks that were asked of count no more once the valve is inked again; of one that was read wrong those alone whose
   * setting was inked again.
   */
  readonly renews?: true | 'its-setting';
}

const AS_IT_IS: MarkAnswer = {
  code: 'left',
  label: 'Nothing is changed',
  changes: 'Nothing more is asked of this mark.',
  follows: asItIs('Nothing is changed for it, as was answered.'),
};
const READ_AGAIN = 'Read pivot to tip and the lift once more: the least sweep is made of those two.';

/**
 * What may be answered to each thing that is asked of a mark, and what follows: none is a bare yes or no where what is said
 * of the mark hangs on it.
 */
export const MARK_ANSWERS: Readonly<Record<MarkAsked, readonly MarkAnswer[]>> = {
  edge: [
    {
      code: 'found',
      label: 'Yes, it runs off the edge',
      // It was read right: there is nothing to enter again.
      leadsTo: 'nothing',
      changes: 'A qualified shop looks at the stem’s edge and the guide before anybody turns it.',
      follows: toSay('Have a qualified shop look at the stem’s edge and the guide.'),
    },
    {
      code: 'not-found',
      label: 'Looked: it stays on the stem',
      changes: 'The width, place or stem that was entered is put right.',
      follows: toSay('Put the width, the place or the stem of that mark right: they say that it runs off.'),
    },
  ],
  close: [
    {
      code: 'found',
      label: 'Yes, it runs off the edge',
      leadsTo: 'nothing',
      changes: 'Nobody turns it, and a qualified shop looks at the stem’s edge and the guide.',
      follows: toSay('Have a qualified shop look at the stem’s edge and the guide.'),
    },
    {
      code: 'not-found',
      label: 'Looked: it stays on the stem',
      changes: 'It is gone on with, and looked at again with each mark that is no nearer to the middle.',
    },
  ],
  narrow: [
    {
      code: 'whole',
      label: 'Yes: all of it, two whole turns',
      changes: 'Then arm or lift is off: both are read once more.',
      follows: toTurn(READ_AGAIN),
    },
    {
      code: 'part',
      label: 'No, or nobody knows',
      changes: 'It counts no more once the tip is inked again all over.',
      follows: toTurn('Ink the whole tip, turn it two whole turns by hand, and enter that mark.'),
      renews: true,
    },
    AS_IT_IS,
  ],
  sideways: [
    {
      code: 'square',
      label: 'Looked: it is square',
      changes: 'It is inked once more; this mark counts no more then.',
      follows: toTurn(
        'Ink it once more; where it is sideways again, look at the tip of the arm and at the guide.',
      ),
      renews: true,
    },
    {
      code: 'out-of-line',
      label: 'No, it is out of line',
      changes: 'It is lined up and inked again; this mark counts no more then.',
      follows: toTurn('Line it up, ink again, and enter that mark.'),
      renews: true,
    },
    AS_IT_IS,
  ],
  mounting: [
    { code: 'stud', label: 'On studs', changes: 'The length of the pushrod moves the mark.' },
    { code: 'pedestal', label: 'On pedestals', changes: 'The height of the pedestal sets the geometry.' },
    { code: 'shaft', label: 'On a shaft', changes: 'The height of the stands sets the geometry.' },
  ],
  try: [
    {
      code: 'inked',
      label: 'Tried and inked',
      changes: 'That mark is entered with what it was made with; what is next goes by both.',
      follows: toSay('Enter the mark that was inked, with what it was made with.'),
    },
    AS_IT_IS,
  ],
  compare: [
    {
      code: 'inked',
      label: 'A neighbour is inked',
      changes: 'Its mark is entered, and the two are compared.',
      follows: toSay('Enter the mark of the neighbour.'),
    },
    AS_IT_IS,
  ],
  heights: [
    {
      code: 'right',
      label: 'Looked: the heights are right',
      changes: 'Then arm or lift is off: both are read once more.',
      follows: toTurn(READ_AGAIN),
    },
    {
      code: 'off',
      label: 'A height is off',
      changes: 'It is put right; these marks count no more once it is inked again.',
      follows: toTurn('Put the height right, ink again, and enter that mark.'),
      renews: true,
    },
    AS_IT_IS,
  ],
  sides: [
    {
      code: 'swapped',
      label: 'Yes, they were swapped',
      changes: 'Each counts toward the other side.',
    },
    {
      code: 'as-told',
      label: 'No: they are as told',
      changes: 'Then a length or a place was read wrong: each is set and inked again.',
      follows: toTurn('Set each length again with a caliper, ink again, and enter those marks.'),
      renews: true,
    },
    AS_IT_IS,
  ],
  contradict: [
    {
      code: 'changed',
      label: 'Something else was changed',
      changes: 'They are not of one thing: they count no more once it is inked again.',
      follows: toTurn('Ink it once more, with nothing else changed from mark to mark, and enter those.'),
      renews: true,
    },
    {
      code: 'misread',
      label: 'One was read wrong',
      changes: 'That one is put right or struck out; inked again at its setting, it counts no more.',
      follows: toTurn(
        'Put the mark that was read wrong right, strike it out, or ink it again at its setting.',
      ),
      renews: 'its-setting',
    },
    {
      code: 'neither',
      label: 'Nobody can say',
      changes: 'They count no more once it is inked again.',
      follows: toTurn('Set each one again with a caliper, ink again, and enter those marks.'),
      renews: true,
    },
    AS_IT_IS,
  ],
  pivot: [
    {
      code: 'right',
      label: 'Compared: they do',
      changes: 'Nothing is changed for this mark.',
      follows: asItIs('Pivot and valve tip stand as the part maker has them: nothing is changed.'),
    },
    {
      code: 'off',
      label: 'No, one is off',
      changes: 'It is put right; this mark counts no more once it is inked again.',
      follows: toTurn('Put that height right, ink again, and enter that mark.'),
      renews: true,
    },
  ],
};

/** A question of marks, with what it asks. */
export interface AskedOfMark {
  readonly asks: MarkAsked;
  readonly question: AssessedQuestion;
}

/** The answer that was given, with what it leads to. */
export function answerOf({ asks, question }: AskedOfMark): MarkAnswer | undefined {
  const code = chosenOf(question);
  return code === undefined ? undefined : MARK_ANSWERS[asks].find((each) => each.code === code);
}
