import { IN } from '../kit/si.ts';

/**
 * Most plungers go no further than this from their clip to their bottom [m]: turns that press one further are asked about.
 *
 * Source: common practice, trade pages give .120 to .150 in for V8 lifters; the lifter’s maker has the figure.
 */
export const USUAL_TRAVEL = 0.15 * IN;

/** Twice that no plunger is known to go [m]: pressed so far one stands on its bottom, whoever made it. Common practice, no source. */
export const LONGEST_TRAVEL = 2 * USUAL_TRAVEL;
