import type { MissingData } from '../../views/parts/missing.examples.ts';
import type { CallContext } from '../call/context.ts';
import { type CallFrame, linkOf, stepsFor } from './frame.ts';

function nextOf(frame: CallFrame, { assessment: { next }, base }: CallContext, current: string | undefined) {
  if (next === undefined || next.step === current) return {};
  const href = `${base}/steps/${next.step}`;
  return {
    next: {
      button: { label: linkOf(frame, next.step), href, key: 'n', kind: 'primary' as const },
      why: next.sentence,
    },
  };
}

/** What every step asks for, each with its key, and the one thing that is next. */
export function missingOf(frame: CallFrame, context: CallContext, current: string | undefined): MissingData {
  const { base, assessment } = context;
  return {
    id: 'missing',
    ...nextOf(frame, context, current),
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
