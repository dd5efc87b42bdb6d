/**
 * Computations whose figures are read with the engine or its adjusters turned, or are turned by: kept with a build they
 * are readings of it, and wait while a stop stands. By itself each is computed all the same.
 */
const TURNING: ReadonlySet<string> = new Set([
  'adjuster',
  'centreline',
  'follower-ratio',
  'lash-hot-cold',
  'lash-shim',
  'lifter-preload',
  'pushrod-length',
  'stand-height',
  'top-dead-centre',
]);

export const isTurning = (computation: string): boolean => TURNING.has(computation);
