import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import type { RaisedStop } from '../stop.ts';
import type { JudgedGap } from './gap.ts';

/** A gap that was read short stops everything until its reading is struck out with a reason. */
export function gapStop({ entry, gap, limit, word }: JudgedGap): RaisedStop[] {
  if (word !== 'short') return [];
  return [
    {
      id: `stop:gap-short:${entry.kind}:${entry.id}`,
      code: 'gap-short',
      about: valveSubject(entry),
      sentence: `Do not turn it: ${SHEET_KINDS[entry.kind].toLowerCase()} on ${placeOf(entry)} is short, ${gapSaid(gap)} against ${inches(limit.value)}.`,
      wayOut:
        'a qualified shop looks; once it is put right, read it again and strike this reading out with the reason.',
      from: 'readings',
      entryId: entry.id,
      line: entry.line,
      answered: false,
    },
  ];
}
