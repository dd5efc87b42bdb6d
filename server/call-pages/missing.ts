import type { MissingData } from '../../views/parts/missing.examples.ts';
import type { CallContext } from '../call/context.ts';
import { type CallFrame, nextStep } from './frame.ts';

/** What every step still lacks, each with its key, and the one that is next. */
export function missingOf(frame: CallFrame, context: CallContext, current: string | undefined): MissingData {
  const next = nextStep(frame, context);
  const at = `${context.base}/steps`;
  const { name, words } = next.step;
  return {
    id: 'missing',
    ...(name === current
      ? {}
      : {
          next: {
            button: { label: words.link, href: `${at}/${name}`, key: 'n', kind: 'primary' },
            why: next.why,
          },
        }),
    needs: frame.steps.map((step) => ({
      for: step.words.link,
      href: `${at}/${step.name}`,
      key: step.key,
      current: step.name === current,
      items: step.needs(context).map(({ text, have }) => ({ text, have })),
    })),
  };
}
