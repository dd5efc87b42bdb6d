/** Said wherever the engine is turned with somebody's hands near it. */
export const turningCaution =
  'Turn the engine by hand at the crank bolt only; stop at any unexpected resistance and find its cause.';
