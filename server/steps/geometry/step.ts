import { newTipMark } from '../../../shared/schemas/tip-mark.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { inFront } from '../../call/report-parts.ts';
import { defineStep } from '../../call/step.ts';
import { stepForm } from '../../call/step-form.ts';
import { strikesWorkings } from '../../call/worked/striking-out.ts';
import { workedForm } from '../../call/worked/worked-form.ts';
import { workedPage } from '../../call/worked/worked-page.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { keepTipMark } from '../../records/tip-marks/tip-marks.ts';
import { markCorrection } from './correction.ts';
import { type GeometryData, geometry } from './parts.ts';
import { marksReport } from './report.ts';
import { markItems } from './takeover.ts';
import { MARKS_TOLD } from './tape-text.ts';

/** The mark on the stem's end and the geometry that makes it. */
export const geometryStep = defineStep({
  name: 'geometry',
  key: 'g',
  words: {
    title: 'Look at the tip mark',
    link: 'Tip mark and geometry',
    say: 'How wide is the mark, and where does it sit: centred, or toward which side?',
    how: 'Ink the tip, light spring, two turns by hand. Measure the width of the mark first, then where it sits. Width first: a centred wide mark is still wrong.',
    turns: true,
  },
  load: ({ context, computations }): GeometryData => ({
    workings: context.workings,
    computations,
    valves: context.assessment.details.marks.valves,
  }),
  page: (loaded, input) => workedPage(geometry, loaded, input),
  forms: [
    stepForm({
      path: '/tip-marks',
      schema: newTipMark,
      run: async (input, { tx, principal, call }) => {
        await keepTipMark(tx, principal, call.buildId, input, refuseTurning);
        return { step: 'geometry?of=marks' };
      },
    }),
    workedForm(geometry),
  ],
  corrections: [markCorrection, strikesWorkings('geometry')],
  told: MARKS_TOLD,
  cautions: () => [],
  report: (_, context) => [{ name: 'marks', ...inFront(marksReport(context)) }],
  takeover: (loaded, context) => markItems(context, loaded),
  worksheet: () => NO_ROWS,
});
