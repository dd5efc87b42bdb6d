import { inFront } from '../../call/report-parts.ts';
import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { noisePage } from './noise-page.ts';
import { noiseReport } from './report.ts';
import { noiseItems } from './takeover.ts';

/** What noise, a loosening adjuster or a failure may come of: one question at a time, and what speaks for each cause. */
export const noiseStep = defineStep({
  name: 'noise',
  key: 'f',
  words: {
    title: 'Find out what may have caused it',
    link: 'Noise and failure',
    say: 'Shut it off first. What do you hear or see, and did the adjuster or its lock move?',
    how: 'Leave it shut off. Look before anything is touched: the adjuster can be judged as it stands.',
    turns: false,
  },
  load: () => undefined,
  page: (_, { context, rejected }) => noisePage(context, rejected),
  // Its questions are answered by the form of all questions.
  forms: [],
  corrections: [],
  told: {},
  cautions: () => [],
  report: (_, context) => [{ name: 'noise', ...inFront(noiseReport(context)) }],
  takeover: (_, context) => noiseItems(context),
  worksheet: () => NO_ROWS,
});
