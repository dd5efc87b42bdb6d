import { formatNumber } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { GapBarData } from '../../../views/parts/gap-bar.examples.ts';
import { gapFigures } from '../../assessment/consequences/consequences.ts';
import type { GapRow } from '../../mechanics/consequences/types.ts';

const inches = (si: number): number => fromSi(si, 'in').value;

function barOf(row: GapRow): GapBarData | undefined {
  const { after, verdict } = row;
  if (after === undefined || verdict === undefined) return undefined;
  return {
    id: `gap-${row.name}`,
    label: row.title,
    text: gapFigures(after),
    unit: 'in',
    basis: after.basis,
    verdict,
    ...(after.value === undefined
      ? {}
      : { point: { at: inches(after.value), text: formatNumber(inches(after.value), 3) } }),
    ...(after.low === undefined ? {} : { low: inches(after.low) }),
    ...(after.high === undefined ? {} : { high: inches(after.high) }),
    limit: {
      at: inches(row.limit.value),
      text: formatNumber(inches(row.limit.value), 3),
      source: row.limit.source,
    },
  };
}

const WORST_FIRST = ['short', 'close', 'clear'] as const;

/** A bar for each gap that is known, the worst first. */
export function gapBarComponents(gaps: readonly GapRow[]): Component[] {
  const bars = gaps.map(barOf).filter((bar) => bar !== undefined);
  return WORST_FIRST.flatMap((word) => bars.filter((bar) => bar.verdict === word)).map(
    (data): Component => ({ template: '/parts/gap-bar', data }),
  );
}
