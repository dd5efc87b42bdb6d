const PASSES_LEFT = ['no more pass', 'one more pass', 'two more passes', 'three passes'];

/** So many passes are still to be read. */
export const passesLeft = (count: number): string => PASSES_LEFT[count] ?? `${count} passes`;
