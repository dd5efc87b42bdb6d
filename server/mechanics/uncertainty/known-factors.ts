/** Coverage factors found before, by level and degrees of freedom: finding one costs more than the rest of a combination. */
export const knownFactors = new Map<string, number>();
