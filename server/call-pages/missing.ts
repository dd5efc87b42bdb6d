import type { MissingData } from '../../views/parts/missing.examples.ts';
import type { CallContext } from '../call/context.ts';
import { type CallFrame, stepsFor } from './frame.ts';

/** What every step asks for, each with its key. */
export function missingOf(frame: CallFrame, context: CallContext, current: string | undefined): MissingData {
  const { base, assessment } = context;
  return {
    id: 'missing',
    needs: stepsFor(frame, context).map((step) => ({
      for: step.words.link,
      href: `${base}/steps/${step.name}`,
      key: step.key,
      current: step.name === current,
      items: assessment.needs
        .filter((need) => need.step === step.name)
        .map(({ what, have }) => ({ text: what, have })),
    })),
  };
}
