const KINDS = [
  'build',
  'call',
  'arm',
  'placement',
  'set-up',
  'reading',
  'sheet',
  'statement',
  'answer',
] as const;

/** The id of the first, second, … of a kind: the same in every call, so that two ways of telling one can be compared. */
export function idOf(kind: (typeof KINDS)[number], number: number): string {
  const at = (KINDS.indexOf(kind) + 1).toString(16).padStart(8, '0');
  return `${at}-0000-7000-8000-${number.toString(16).padStart(12, '0')}`;
}
