import { formatNumber, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Slot } from '../../../views/parts/part.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { chanceText } from '../../mechanics/explain-readings/words.ts';
import type { Explained } from '../explain.ts';
import { nominalText } from './ratio-words.ts';

/** Each action as the sentence that asks for it. */
const ASK: Record<NonNullable<Explained['nextReading']>['action'], string> = {
  'read-back': 'Read the entries back: which valve is it, and is it lobe lift or valve lift?',
  'one-more-pass': 'Take one more pass, small hand first, and say which way the hand ran.',
  'lash-to-zero': 'Take the lash up to zero and read again.',
  'align-plunger': 'Set the plunger parallel to the stem, seen from front and side, and read again.',
  'valve-lift-at-.200': 'Turn to .200 in of lobe lift and read the valve there.',
  'lobe-at-lifter': 'Read the lobe lift at the lifter body.',
  'light-spring-solid-lifter':
    'Fit a light checking spring and a solid lifter, set the dial up anew, and read.',
  'rocker-on-another-valve': 'Move this rocker to another valve and read it there.',
};

const CAUSE_WORDS: Record<string, string> = {
  'no-mistake': 'nothing is wrong',
  'turn-too-many': 'a turn counted too many',
  'turn-too-few': 'a turn missed',
  'hand-read-backwards': 'the hand read backwards',
  'lash-left-in': 'lash left in',
  'plunger-tilted': 'the plunger leans',
  'zero-moved': 'the zero has moved',
  'wrong-card-row': 'the card’s other row was read',
  'wrong-valve': 'the other valve was read',
  'valve-lift-as-lobe': 'a valve lift stands as lobe lift',
  'card-not-this-lobe': 'the card is not this lobe’s',
  slip: 'a digit slipped',
  'unit-or-decimal': 'unit or point mixed up',
  'unlisted-fault': 'a fault not on the list',
  'passes-scatter': 'the passes scatter',
  'ratio-not-listed': 'a ratio not on the list',
};

const causeText = (cause: string) => CAUSE_WORDS[cause] ?? cause;

function explanationsTable(explained: Explained): Slot {
  const data: TableData = {
    caption: 'What would have to be true',
    columns: [{ label: 'Then it is' }, { label: 'If' }, { label: 'How likely', number: true }],
    rows: explained.explanations.slice(0, 6).map((each) => ({
      cells: [
        each.nominal === undefined ? 'none on the list' : `a ${nominalText(each.nominal)}`,
        {
          text:
            each.causes.length === 0
              ? 'the readings are right as they stand'
              : each.causes.map(causeText).join(' and '),
          why: each.needs,
        },
        chanceText(each.probability),
      ],
    })),
    note: 'Chances are judged from common practice and what was read; they are questions, not verdicts. Only a person strikes a reading out.',
  };
  return { template: '/parts/table', data };
}

function nextSlots(explained: Explained): Slot[] {
  const { nextReading } = explained;
  if (nextReading === undefined) {
    const text = explained.settled
      ? 'The name is settled on these readings.'
      : 'More readings of this kind won’t tell.';
    return [{ template: '/parts/notice', data: { text } }];
  }
  const rows = nextReading.outcomes.map((outcome) => {
    const lift =
      outcome.expected === undefined
        ? outcome.chanceFound === undefined
          ? ''
          : `asking finds it in ${chanceText(outcome.chanceFound)}`
        : `${formatQuantity(fromSi(outcome.expected, 'in'), { derived: true })} ± ${formatNumber(fromSi(outcome.plusMinus ?? 0, 'in').value, 3)}`;
    const name = outcome.nominal === undefined ? '' : ` and it is a ${nominalText(outcome.nominal)}`;
    return { cells: [`${causeText(outcome.cause)}${name}`, lift] };
  });
  const table: TableData = {
    caption: 'What each outcome would mean',
    columns: [{ label: 'If' }, { label: 'It would show', number: true }],
    rows,
  };
  return [
    {
      template: '/parts/notice',
      data: {
        text: `The next reading worth taking, about ${nextReading.minutes} min: ${ASK[nextReading.action]}`,
      },
    },
    { template: '/parts/table', data: table },
  ];
}

/** What would explain the readings: the ratio first, the name second, and the next reading worth taking. */
export function explainedSlots(explained: Explained): Slot[] {
  const lead = explained.somethingElse >= 0.3 ? `None fits well. ${explained.summary}` : explained.summary;
  return [
    { template: '/parts/notice', data: { text: lead } },
    explanationsTable(explained),
    ...nextSlots(explained),
  ];
}
