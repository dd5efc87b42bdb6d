import type { RatioCall } from './ratio-call.ts';
import { AS_SET_UP } from './ratio-calls-as-set-up.ts';
import { OF_CARD_AND_LASH } from './ratio-calls-of-card-and-lash.ts';
import { OF_PASSES } from './ratio-calls-of-passes.ts';

/** Calls about a ratio, each told in three orders of entry. */
export const RATIO_CALLS: readonly RatioCall[] = [...AS_SET_UP, ...OF_PASSES, ...OF_CARD_AND_LASH];
