import { newLashLine } from '../../../shared/schemas/lash-log.ts';
import { also, hasEvent, hasWorking } from '../../call/needs.ts';
import { defineStep, NO_FINDINGS } from '../../call/step.ts';
import { stepForm } from '../../call/step-form.ts';
import { workedForm } from '../../call/worked/worked-form.ts';
import { workedPage } from '../../call/worked/worked-page.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { keepLash, lashLogOf } from '../../records/lash-log/lash-log.ts';
import { listWorkings } from '../../records/workings/workings.ts';
import { type AdjusterData, adjuster } from './parts.ts';
import { lashReport } from './report.ts';
import { adjusterItems } from './takeover.ts';

/** What an adjuster's turns do, and the lash log. */
export const adjusterStep = defineStep({
  name: 'adjuster',
  key: 'a',
  words: {
    title: 'Turn the adjuster, and know what it does',
    link: 'Adjusters and lash',
    say: 'Which thread is on the adjuster, and how far was it turned from zero lash?',
    how: 'On the base circle. Find zero lash by up-and-down play, not by spinning the pushrod; then count the turns.',
  },
  load: async ({ tx, context, computations }): Promise<AdjusterData> => ({
    workings: await listWorkings(tx, context.principal, context.build.id),
    computations,
    log: await lashLogOf(tx, context.principal, context.build.id),
  }),
  needs: (context) => [
    // Setting a noisy one again hides it: there the log is asked for, not the turns.
    ...(context.plan.logFirst ? [] : [also('what the turns do', hasWorking(context, 'adjuster'))]),
    also('a lash as it was found or set', hasEvent(context, 'lash-kept')),
  ],
  page: (loaded, input) => workedPage(adjuster, loaded, input),
  forms: [
    stepForm({
      path: '/lash',
      schema: newLashLine,
      run: async (input, { tx, principal, call }) => {
        await keepLash(tx, principal, call.buildId, input);
        return { step: 'adjuster?of=lash' };
      },
    }),
    workedForm(adjuster),
  ],
  corrections: [],
  findings: () => NO_FINDINGS,
  cautions: () => [],
  report: ({ log }) => [{ name: 'lash', components: lashReport(log) }],
  takeover: (loaded) => adjusterItems(loaded),
  worksheet: () => NO_ROWS,
});
