import { defineStep } from '../../call/step.ts';
import { isStopped } from '../../call/under-stop.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { isDial } from '../../mechanics/kit/lift-tools.ts';
import { passCorrection } from './correct-reading.ts';
import { ratioForms } from './forms.ts';
import { setUpCorrection } from './put-right.ts';
import { ratioPage } from './ratio-page.ts';
import { ratioReport } from './report.ts';
import { rawPasses } from './takeover.ts';
import { RATIO_TOLD } from './tape-text.ts';
import { ratioRows } from './worksheet.ts';

/** The ratio on the engine: method first, then passes, the answer and what it rests on. */
export const ratioStep = defineStep({
  name: 'ratio',
  key: '6',
  words: {
    title: 'Read the ratio on the engine',
    link: 'Ratio on the engine',
    say: 'Where does the small hand stand, and then the needle? And when you are back on the base circle?',
    // What is not a dial has neither hand nor needle.
    sayNow: ({ setUps }) =>
      isDial(setUps.at(-1)?.method.tool)
        ? undefined
        : 'What was read with the valve shut, and what at full lift? And once more on the base circle?',
    how: 'Turn by hand in running direction to full lift. Read the small hand first, then the needle. Go on to the base circle and look at the zero.',
    turns: true,
  },
  load: () => undefined,
  page: (_, input) => ratioPage(input),
  forms: ratioForms,
  corrections: [passCorrection, setUpCorrection],
  told: RATIO_TOLD,
  // They say how to read it: under a stop nobody does.
  cautions: (_, context) =>
    isStopped(context) ? [] : context.assessment.details.setUps.flatMap(({ cautions }) => cautions),
  report: (_, context) => [{ name: 'ratio', ...ratioReport(context) }],
  takeover: (_, context) => rawPasses(context),
  worksheet: (context) => (isStopped(context) ? NO_ROWS : ratioRows(context)),
});
