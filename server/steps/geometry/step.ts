import { newTipMark } from '../../../shared/schemas/tip-mark.ts';
import { judgedMarks } from '../../assessment/tip-marks/judged.ts';
import { also, hasEvent, hasWorking } from '../../call/needs.ts';
import { defineStep, NO_FINDINGS } from '../../call/step.ts';
import { stepForm } from '../../call/step-form.ts';
import { workedForm } from '../../call/worked/worked-form.ts';
import { workedPage } from '../../call/worked/worked-page.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { TIP_MARK_EVENTS } from '../../records/tip-marks/events.ts';
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
    title: 'Look at the sweep across the tip',
    link: 'Tip mark and geometry',
    say: 'How wide is the mark, and where does it sit: toward the valley or the exhaust side?',
    how: 'Ink the tip, light spring, two turns by hand. Measure the width of the mark first, then where it sits. Width first: a centred wide mark is still wrong.',
  },
  load: ({ context, computations }): GeometryData => ({
    workings: context.workings,
    computations,
    marks: judgedMarks(context.record),
  }),
  needs: (context) => {
    const { cam, rockers } = context.build.spec;
    const lift = cam?.intake?.lobeLift ?? cam?.exhaust?.lobeLift;
    // The least sweep is calculated from what the build says, or kept by itself.
    const known =
      rockers?.pivotToTip !== undefined && rockers.nominalRatio !== undefined && lift !== undefined;
    return [
      also('a tip mark: its width, then its place', hasEvent(context, TIP_MARK_EVENTS['tip-mark-kept'])),
      also('arm and lift, for the least sweep', known || hasWorking(context, 'roller-sweep')),
    ];
  },
  page: (loaded, input) => workedPage(geometry, loaded, input),
  forms: [
    stepForm({
      path: '/tip-marks',
      schema: newTipMark,
      run: async (input, { tx, principal, call }) => {
        await keepTipMark(tx, principal, call.buildId, input);
        return { step: 'geometry?of=marks' };
      },
    }),
    workedForm(geometry),
  ],
  corrections: [markCorrection],
  told: MARKS_TOLD,
  findings: () => NO_FINDINGS,
  cautions: () => [],
  report: ({ marks }) => [{ name: 'marks', components: marksReport(marks) }],
  takeover: ({ marks }, context) => markItems(context, marks),
  worksheet: () => NO_ROWS,
});
