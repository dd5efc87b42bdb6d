/** A field's name and what it holds. */
export type Entry = readonly [name: string, value: string];

const filled = (entries: readonly Entry[]): string =>
  entries
    .filter(([, value]) => value.trim() !== '')
    .map((entry) => JSON.stringify(entry))
    .toSorted()
    .join();

/** Whether two makings of a form say the same; a field that is empty says nothing. */
export const saysSame = (a: readonly Entry[], b: readonly Entry[]): boolean => filled(a) === filled(b);
