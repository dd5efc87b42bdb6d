import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { consequencesPage } from './consequences-page.ts';
import { consequencesForms } from './forms.ts';
import { bySide, loadConsequences } from './load.ts';
import { consequencesReport } from './report.ts';
import { gapItems } from './takeover.ts';
import { CONSEQUENCES_TOLD } from './tape-text.ts';

/** What the ratio does to lift, loads and clearances. */
export const consequencesStep = defineStep({
  name: 'consequences',
  key: '9',
  words: {
    title: 'See what the ratio does, before parts are fitted',
    link: 'What the ratio does',
    say: 'Which of these gaps did you measure yourself, and with which arms on it? Was the lifter solid?',
    how: 'Each gap says whether it was measured or calculated. What is close is measured, not calculated; what is short stops it.',
  },
  load: loadConsequences,
  page: consequencesPage,
  forms: consequencesForms,
  corrections: [],
  told: CONSEQUENCES_TOLD,
  cautions: (all, context) => bySide(context, all).flatMap(({ cautions }) => cautions),
  report: (all, context) => [{ name: 'consequences', components: consequencesReport(bySide(context, all)) }],
  takeover: (all, context) => gapItems(bySide(context, all)),
  worksheet: () => NO_ROWS,
});
