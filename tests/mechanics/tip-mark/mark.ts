import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';

export const IN = 0.0254;

type At = number | 'valley' | 'exhaust' | 'sideways';

/** Width in inches, where its middle is (toward the exhaust side positive), and what it was made with. */
export function mark(width: number, at: At, made: { pushrod?: number; shims?: number } = {}): Mark {
  const side = typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    width: width * IN,
    side,
    ...(typeof at === 'number' ? { off: Math.abs(at) * IN } : {}),
    ...(made.pushrod === undefined ? {} : { pushrod: made.pushrod * IN }),
    ...(made.shims === undefined ? {} : { shims: made.shims * IN }),
  };
}
export const rod = (pushrod: number) => ({ pushrod });
export const stand = (shims: number) => ({ shims });

/** A least sweep of .030 in, ordinary to .050. */
export const on = (mounting: Mounting | undefined, more: Partial<MarkContext> = {}): MarkContext => ({
  leastSweep: 0.03 * IN,
  overLeast: 0.02 * IN,
  mounting,
  beside: [],
  ...more,
});
