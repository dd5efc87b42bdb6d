import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { partCorrection } from './correction.ts';
import { partForms } from './forms.ts';
import { identifyPage } from './identify-page.ts';
import { partsSeen } from './of-part.ts';
import { partReport } from './report.ts';
import { partItems } from './takeover.ts';
import { PART_TOLD } from './tape-text.ts';

/** What a part in the hand may be, from what is measured and read of it. */
export const identifyStep = defineStep({
  name: 'identify',
  key: '5',
  words: {
    title: 'Find out what the part is',
    link: 'Part in the hand',
    say: 'Is there a number on the arm? Which, word for word? Then the caliper: the hole first, then the width over the trunnion.',
    how: 'Clean the part. Measure one thing at a time, as the drawing shows it; each reading is kept.',
    turns: false,
  },
  catalogue: true,
  load: ({ context }) => partsSeen(context),
  page: (parts, input) => identifyPage(parts, input),
  forms: partForms,
  corrections: [partCorrection],
  told: PART_TOLD,
  cautions: () => [],
  report: (parts, context) => [{ name: 'part', ...partReport(parts, context) }],
  takeover: (parts, context) => parts.flatMap((part) => partItems(context, part)),
  worksheet: () => NO_ROWS,
});
