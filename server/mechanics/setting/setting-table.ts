import table from '../../../seeds/setting.json' with { type: 'json' };
import { IN } from '../kit/si.ts';

const { preload, shortTravel, pushrodEffective } = table;

interface Band {
  readonly from: number;
  readonly to: number;
  readonly source: string;
}

const band = ({ from, to, source }: Band): Band => ({ from: from * IN, to: to * IN, source });

/** Kinds of plunger that are set differently. */
export const PLUNGERS = ['usual', 'short-travel'] as const;
type Plunger = (typeof PLUNGERS)[number];

/** The preload that is usual where the maker’s is not given [m], with its source. */
export const USUAL_PRELOADS: Readonly<Record<Plunger, Band>> = {
  usual: band(preload),
  'short-travel': band(shortTravel),
};

/** How much shorter a pushrod’s effective length is than its overall length [m], with its source. */
export const EFFECTIVE_SHORTER = {
  by: pushrodEffective.shorter * IN,
  source: pushrodEffective.source,
} as const;
