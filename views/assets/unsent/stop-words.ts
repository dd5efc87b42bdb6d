import type { Entry } from './store.ts';

/** What the person typed with the stop; it may be left empty. */
const reasonOf = ({ fields }: Entry): string => fields.find(([name]) => name === 'reason')?.[1].trim() ?? '';

/** A stop that was said on this device, in one sentence. */
export function sentenceOf(stop: Entry): string {
  const reason = reasonOf(stop);
  return reason === '' ? 'You said stop.' : `You said stop: “${reason}”`;
}
