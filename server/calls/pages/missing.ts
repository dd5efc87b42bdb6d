import type { MissingData } from '../../../views/parts/missing.examples.ts';
import { needsOf, nextStep } from './needs.ts';
import type { Sight } from './sight.ts';
import { STEP_NAMES, STEPS, type StepName } from './steps.ts';

/** What every step still lacks, each with its key, and the one that is next. */
export function missingOf(sight: Sight, current: StepName | undefined): MissingData {
  const next = nextStep(sight);
  const at = `${sight.base}/steps`;
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
      items: needsOf(step, sight).map(({ text, have }) => ({ text, have })),
    })),
  };
}
