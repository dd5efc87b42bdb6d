/** The question which of several readings of a gap was misread. */
export const READ_TWICE = 'gap-read-twice';

/** What each answer of it leads to. */
export const MISREAD = { short: 'short-one', again: 'again', neither: 'neither' } as const;
