import { allEntries, changeEntry, type Entry } from './store.ts';

/** Where an entry goes back to that was taken up to be changed and left: as it was, in its place of the line. */
export const asItWas = ({ refusal }: Pick<Entry, 'refusal'>): Entry['state'] =>
  refusal === undefined || refusal === '' ? 'waiting' : 'refused';

/** Lets go what was being changed on a page that is no longer there; nothing is held back for good. Answers whether there was any. */
export async function releaseLeft(but: number | undefined): Promise<boolean> {
  const left = (await allEntries()).filter((entry) => entry.state === 'changing' && entry.id !== but);
  for (const entry of left) await changeEntry(entry.id, { state: asItWas(entry) });
  return left.length > 0;
}
