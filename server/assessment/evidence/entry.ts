import type { EvidenceEntry } from '../../mechanics/assessment/evidence.ts';
import type { Entry } from '../../records/corrections/entries.ts';

/** What every entry of the record has as evidence. One that was replaced, or strikes another out, does not count. */
export const entryEvidence = ({ id, seq, replacedBy, struck }: Entry): EvidenceEntry => ({
  id,
  line: seq,
  standing: replacedBy === undefined && !struck,
});
