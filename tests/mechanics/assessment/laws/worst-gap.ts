import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Judgement } from '../../../../server/mechanics/assessment/assessment.ts';
import type {
  Evidence,
  ScanEvidence,
  SheetEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import type { Law } from './law.ts';

const RANK: Readonly<Record<string, number>> = { short: 0, close: 1, clear: 2 };

/** The same gap read once more, later and larger by far. */
function withLarger(evidence: Evidence, entry: SheetEvidence): Evidence {
  const larger: SheetEvidence = {
    ...entry,
    id: `${entry.id}-again`,
    line: 10_000,
    reading: { value: (entry.reading.high ?? entry.reading.value ?? entry.reading.low ?? 0) + 0.01 },
  };
  return { ...evidence, sheet: [...evidence.sheet, larger] };
}

/** The same scan read once more, later, every gap of it larger by far and with nothing left to ask. */
function withLargerScan(evidence: Evidence, scan: ScanEvidence): Evidence {
  const larger: ScanEvidence = {
    ...scan,
    id: `${scan.id}-again`,
    line: 10_001,
    lifter: 'solid',
    spring: 'light',
    lash: 'zero',
    points: scan.points.map((point) => ({
      ...point,
      gap: { value: (point.gap.high ?? point.gap.value ?? point.gap.low ?? 0) + 0.05 },
    })),
  };
  return { ...evidence, scans: [...(evidence.scans ?? []), larger] };
}

const gapsOf = (judgements: readonly Judgement[]) =>
  new Map(
    judgements.flatMap(({ id, against, word }) =>
      against.to === 'limit' && word !== undefined ? [[id, word]] : [],
    ),
  );

/** Law 5: the worst reading of a gap stands until a person strikes it out; a larger later one replaces nothing. */
export const worstGapStands: Law = ({ evidence, assessment }) => {
  const isGap = ({ kind }: SheetEvidence) => !['lobe-lift', 'valve-lift', 'lash', 'preload'].includes(kind);
  const entry = evidence.sheet.find((each) => each.standing && isGap(each));
  const scan = evidence.scans?.find((each) => each.standing);
  if (entry === undefined && scan === undefined) return [];
  const withGap = entry === undefined ? evidence : withLarger(evidence, entry);
  const withBoth = scan === undefined ? withGap : withLargerScan(withGap, scan);
  const later = gapsOf(assess(withBoth).judgements);
  return [...gapsOf(assessment.judgements)].flatMap(([id, word]) => {
    const after = later.get(id);
    if (after === undefined)
      return [`${id}: ${word} is gone after a larger reading of ${entry?.id ?? scan?.id}`];
    return (RANK[after] ?? 0) > (RANK[word] ?? 0)
      ? [`${id}: ${word} became ${after} by a larger reading`]
      : [];
  });
};
