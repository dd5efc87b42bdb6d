import type { Component } from '../../../views/parts/part.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { Explained } from '../../assessment/ratio/explain.ts';
import { nominalText } from '../../call/ratio-text.ts';
import { chanceText } from '../../mechanics/explain-readings/words.ts';
import { causeText } from './cause-words.ts';
import { foundMistake } from './next-reading.ts';

const SHOWN = 6;
/** A figure stays on one line with its sign. */
const kept = (text: string) => text.replaceAll(' %', '\u00a0%');

/** What would have to be true for each explanation, and how likely each is on what was read. */
export function explanationsTable(explained: Explained): Component {
  const data: TableData = {
    caption: 'What would have to be true',
    columns: [{ label: 'Then it is' }, { label: 'If' }, { label: 'How likely', number: true }],
    rows: explained.explanations.slice(0, SHOWN).map((each) => ({
      cells: [
        each.nominal === undefined ? 'none on the list' : `a ${nominalText(each.nominal)}`,
        {
          text:
            each.causes.length === 0
              ? 'the readings are right as they stand'
              : each.causes.map(causeText).join(' and '),
          why: each.needs,
        },
        kept(chanceText(each.probability)),
      ],
    })),
    note: 'Chances are judged from common practice and what was read; they are questions, not verdicts. Only a person strikes a reading out.',
  };
  return { template: '/parts/table', data };
}

/**
 * The ratio first, the name second. The sum always speaks of the light spring, so on a running one the two
 * figures on the page are two quantities, and it is said.
 */
export function leadComponent(explained: Explained, spring: string): Component {
  const quantity =
    spring === 'light'
      ? 'With the likely mistakes weighed in, the light-spring ratio is '
      : 'With flex and the likely mistakes weighed in, on a light spring it would read ';
  // Where a mistake is as good as found, the way out is to strike it, and that is said below.
  const summary =
    foundMistake(explained) === undefined
      ? explained.summary
      : explained.summary.replace(" More readings won't tell.", '');
  return { template: '/parts/notice', data: { text: kept(`${quantity}${summary}`) } };
}
