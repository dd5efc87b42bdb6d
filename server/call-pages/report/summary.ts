import type { Component } from '../../../views/parts/part.ts';
import { missingSentences, nextSentences, promiseLines, stopFlag, type WholeCall } from './call-summary.ts';

/** As many of a kind as are read at a glance. */
const FEW = 4;

const orNone = (items: readonly string[], none: string): readonly string[] =>
  items.length === 0 ? [none] : items;

/** What a builder reads in twenty seconds. */
export function summaryComponent(whole: WholeCall, others: readonly string[]): Component {
  const found = [...whole.findings.values()].flatMap((each) => each.found.slice(-FEW));
  return {
    template: '/pages/report/summary',
    data: {
      stop: stopFlag(whole),
      parts: [
        { title: 'Found', items: orNone([...found, ...others], 'Nothing yet.') },
        {
          title: 'Not known',
          items: orNone(missingSentences(whole), 'Nothing that the answer waits for.'),
        },
        { title: 'Next', items: nextSentences(whole) },
        {
          title: 'Who, by when',
          items: orNone(promiseLines(whole), 'Nothing is promised: no name and no date is on record.'),
        },
      ],
    },
  };
}
