import type { MissingData } from '../../views/parts/missing.examples.ts';
import type { CallContext } from '../call/context.ts';
import { STEP_NAMES, STEPS, type StepName } from '../call/steps.ts';
import { needsOf, nextStep } from './needs.ts';

/** What every step still lacks, each with its key, and the one that is next. */
export function missingOf(context: CallContext, current: StepName | undefined): MissingData {
  const next = nextStep(context);
  const at = `${context.base}/steps`;
  return {
    id: 'missing',
    ...(next.step === current
      ? {}
      : {
          next: {
            button: { label: STEPS[next.step].link, href: `${at}/${next.step}`, key: 'n', kind: 'primary' },
            why: next.why,
          },
        }),
    needs: STEP_NAMES.map((step) => ({
      for: STEPS[step].link,
      href: `${at}/${step}`,
      key: STEPS[step].key,
      current: step === current,
      items: needsOf(step, context).map(({ text, have }) => ({ text, have })),
    })),
  };
}
