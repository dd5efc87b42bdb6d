import type { EvidenceEntry } from '../../mechanics/assessment/evidence.ts';
import type { Entry } from '../../records/corrections/entries.ts';

/**
 * What every entry of the record has as evidence. One that was replaced, or strikes another out, does not count.
 *
 * @param entered the line of the first entry of its chain of corrections
 */
export const entryEvidence = (
  { id, seq, replacedBy, struck }: Entry,
  entered: number = seq,
): EvidenceEntry => ({
  id,
  line: seq,
  ...(entered === seq ? {} : { entered }),
  standing: replacedBy === undefined && !struck,
});
