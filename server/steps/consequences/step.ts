import { defineStep } from '../../call/step.ts';
import { consequencesPage } from './consequences-page.ts';
import { consequencesForms } from './forms.ts';
import { consequencesReport } from './report.ts';
import { strikesConsequences } from './striking-out.ts';
import { gapItems } from './takeover.ts';
import { CONSEQUENCES_TOLD } from './tape-text.ts';
import { gapRows } from './worksheet.ts';

/** What the ratio does to lift, loads and clearances. */
export const consequencesStep = defineStep({
  name: 'consequences',
  key: '9',
  words: {
    title: 'See what the ratio does, before parts are fitted',
    link: 'What the ratio does',
    say: 'Which of these gaps did you measure yourself, and with which arms on it? Was the lifter solid?',
    how: 'Each gap says whether it was measured or calculated. One that can’t be told from its limit is measured, not calculated; one under its limit stops it.',
    turns: true,
  },
  load: () => undefined,
  page: consequencesPage,
  forms: consequencesForms,
  corrections: [strikesConsequences],
  told: CONSEQUENCES_TOLD,
  cautions: (_, { assessment }) => assessment.details.change.flatMap(({ cautions }) => cautions),
  report: (_, context) => [{ name: 'consequences', ...consequencesReport(context) }],
  takeover: (_, context) => gapItems(context),
  worksheet: gapRows,
});
