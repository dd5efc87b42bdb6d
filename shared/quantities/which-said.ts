import type { Ambiguity } from './number-types.ts';

/** A text with several meanings is asked about; with one that nobody said, whether it is that. */
export function whichSaid(text: string, ambiguities: readonly Pick<Ambiguity, 'readAs'>[]): string {
  const ways = ambiguities.map(({ readAs }) => readAs).join(', or ');
  return ambiguities.length === 1
    ? `came as ${text.trim()} without a unit. Is it ${ways}? Pick it, or write it with its unit`
    : `can be read in more than one way: ${ways}. Pick one, or write it with its unit`;
}
