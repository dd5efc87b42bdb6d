/** Said wherever a valve spring is about to be handled. */
export const springCaution =
  'A compressed valve spring can throw parts: eye protection on, nobody in its line, the right compressor.';

/** Said wherever a room left or a load is set against a default. */
export const makerFirst = 'The part maker’s figure goes before any default limit used here.';

/** Said where the sums leave no room at full lift. */
export const coilsTouch =
  'The coils touch at full lift or before it: the open load calculated from the rate is not the real one, and something in the train would bend or break.';
