/** The two sides of a valve train, in the order in which they are told. */
export const SIDES = ['intake', 'exhaust'] as const;
