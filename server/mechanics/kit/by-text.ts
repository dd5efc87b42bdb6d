/** One text after another as its letters go, the same on every machine: for lists whose order says nothing else. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
