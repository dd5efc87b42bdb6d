import { IN } from '../kit/si.ts';

/**
 * Most plungers go no further than this from their clip to their bottom [m]: turns that press one further, where nobody
 * said how far its maker lets it go, may have put it on its bottom.
 *
 * Source: common practice, trade pages give .120 to .150 in for V8 lifters; the lifter’s maker has the figure.
 */
export const USUAL_TRAVEL = 0.15 * IN;
