/** What the inference takes: the schema of its JSON and its own check go by the same figures. */
export const MOST_NAMES = 40;
export const MOST_READINGS = 40;
export const HIGHEST_RATIO = 100;
/** Passes of one kind in one set-up, and set-ups of one valve. */
export const MOST_PASSES = 1_000;
export const MOST_SET_UPS = 1_000;
