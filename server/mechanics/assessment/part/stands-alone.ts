/** The word of the question to a reading that speaks against the family which all others fit. */
export const STANDS_ALONE = 'reading-stands-alone';
