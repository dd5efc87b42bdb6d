import table from '../../../seeds/setting.json' with { type: 'json' };
import { IN } from '../kit/si.ts';

const { preload, pushrodEffective } = table;

/** The preload that is usual where the maker’s is not given [m], with its source. */
export const USUAL_PRELOAD = {
  from: preload.from * IN,
  to: preload.to * IN,
  source: preload.source,
} as const;

/** How much shorter a pushrod’s effective length is than its overall length [m], with its source. */
export const EFFECTIVE_SHORTER = {
  by: pushrodEffective.shorter * IN,
  source: pushrodEffective.source,
} as const;
