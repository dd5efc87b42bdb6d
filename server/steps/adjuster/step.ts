import { typedLashLine } from '../../../shared/schemas/lash-log.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { inFront } from '../../call/report-parts.ts';
import { defineStep } from '../../call/step.ts';
import { stepForm } from '../../call/step-form.ts';
import { strikesWorkings } from '../../call/worked/striking-out.ts';
import { workedForm } from '../../call/worked/worked-form.ts';
import { workedPage } from '../../call/worked/worked-page.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { keepLash } from '../../records/lash-log/lash-log.ts';
import { standingLines } from './lash-text.ts';
import { type AdjusterData, adjuster } from './parts.ts';
import { lashReport } from './report.ts';
import { adjusterItems } from './takeover.ts';
import { LASH_TOLD } from './tape-text.ts';

/** What an adjuster's turns do, and the lash log. */
export const adjusterStep = defineStep({
  name: 'adjuster',
  key: 'a',
  words: {
    title: 'Read the lash, and know what changes it',
    link: 'Adjusters and lash',
    say: 'Which thread is on the adjuster, and how far was it turned from zero lash?',
    how: 'On the base circle. Find zero lash by up-and-down play, not by spinning the pushrod; then count the turns.',
    turns: true,
  },
  load: ({ context, computations }): AdjusterData => ({
    workings: context.workings,
    computations,
    lines: standingLines(context).length,
    order: context.build.spec.engine?.firingOrder ?? '',
  }),
  page: (loaded, input) => workedPage(adjuster, loaded, input),
  forms: [
    stepForm({
      path: '/lash',
      schema: typedLashLine,
      beside: ['part'],
      run: async (input, { tx, principal, call, now, req }) => {
        await keepLash(tx, principal, call.buildId, input, refuseTurning, now);
        return { step: `adjuster?of=${req.fields.part === 'shims' ? 'shims' : 'lash'}` };
      },
    }),
    workedForm(adjuster),
  ],
  corrections: [strikesWorkings('adjuster')],
  told: LASH_TOLD,
  cautions: () => [],
  report: (_, context) => [{ name: 'lash', ...inFront(lashReport(context)) }],
  takeover: (loaded, context) => adjusterItems(context, loaded),
  worksheet: () => NO_ROWS,
});
