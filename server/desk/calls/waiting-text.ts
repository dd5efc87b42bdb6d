import type { Assessment } from '../../mechanics/assessment/assessment.ts';

/** What a call waits for: what stops it, else the one thing worth most now; of a closed one what was promised. */
export function waitingText({ stop, next, needs }: Assessment): string {
  const [first] = stop;
  if (first !== undefined) return first.sentence;
  if (next !== undefined) return next.sentence;
  const promised = needs.filter(({ id, have }) => id.startsWith('need:notes:promise:') && !have).length;
  if (promised === 0) return 'nothing, it is closed';
  return `closed; ${promised} open ${promised === 1 ? 'promise' : 'promises'}`;
}
