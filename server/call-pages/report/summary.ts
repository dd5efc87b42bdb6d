import type { Component } from '../../../views/parts/components.ts';
import {
  foundSentences,
  missingSentences,
  nextSentences,
  nothingMissing,
  openQuestions,
  promiseLines,
  stopFlag,
  type WholeCall,
} from './call-summary.ts';

const orNone = (items: readonly string[], none: string): readonly string[] =>
  items.length === 0 ? [none] : items;

/** What a builder reads in twenty seconds. */
export function summaryComponent(whole: WholeCall, others: readonly string[]): Component {
  const asked = openQuestions(whole.context);
  return {
    template: '/pages/report/summary',
    data: {
      stop: stopFlag(whole.context),
      parts: [
        { title: 'Found', items: orNone([...foundSentences(whole), ...others], 'Nothing yet.') },
        {
          title: 'Not known',
          items: orNone(missingSentences(whole), nothingMissing(whole.context)),
        },
        ...(asked.length === 0 ? [] : [{ title: 'Open questions', items: asked }]),
        { title: 'Next', items: nextSentences(whole) },
        {
          title: 'Who, by when',
          items: orNone(promiseLines(whole), 'Nothing is promised: no name and no date is on record.'),
        },
      ],
    },
  };
}
