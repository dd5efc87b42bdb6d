/**
 * Figures are worked out in steps, each a little rounded: what is apart by no more than this, in metres, radians or
 * ratio, is apart by nothing that anybody reads.
 */
const ROUNDED = 1e-9;

/** At least so much; at the edge too. */
export const isAtLeast = (value: number, least: number): boolean => value >= least - ROUNDED;

/** Off either way by no more than the band; at its edge still within. */
export const isWithin = (off: number, band: number): boolean => isAtLeast(band, Math.abs(off));
