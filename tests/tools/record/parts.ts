import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { FamilyEvidence } from '../../../server/mechanics/assessment/part/family.ts';
import type { PartFamily } from '../../../server/records/catalogue/families.ts';
import type { BuildRecord } from '../../../server/records/whole-build/build-record.ts';
import { UNITS } from '../../../shared/quantities/units.ts';
import { PART_KINDS, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { AT, entry, ifKnown, typed, WHO } from './stored.ts';

export function family({ sizes, nominalRatio, ...rest }: FamilyEvidence): PartFamily {
  const inchesOf: Partial<Record<keyof typeof PART_SIZES, number>> = {};
  for (const kind of keysOf(PART_SIZES)) {
    const size = sizes[kind];
    if (size !== undefined) inchesOf[kind] = size / UNITS.in.toSi;
  }
  return { ...rest, nominalRatio, sizes: inchesOf, notes: '', by: WHO.by, changedAt: AT };
}

export const handParts = (evidence: Evidence): BuildRecord['handParts'] =>
  (evidence.handParts ?? []).map(({ id, name, armId }, index) => ({
    id,
    name,
    armId,
    seq: index + 1,
    by: WHO.by,
    at: AT,
  }));

export const partReadings = (evidence: Evidence): BuildRecord['partReadings'] =>
  evidence.part.map(({ kind, size, word, typed: text, readAs, ...rest }) => ({
    ...entry(rest),
    partId: rest.partId,
    tool: rest.tool ?? ('not-said' as const),
    within: ifKnown(rest.typedWithin),
    count: rest.count,
    how: '',
    kind: keysOf(PART_KINDS).find((each) => each === kind) ?? 'other-number',
    typed: text,
    size: size === undefined ? undefined : typed(size, rest.unit === 'mm' ? 'mm' : 'in'),
    word,
    readAs,
    place: '',
  }));
