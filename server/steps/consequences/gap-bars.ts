import { formatNumber } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { GapBarData } from '../../../views/parts/gap-bar.examples.ts';
import type { Component } from '../../../views/parts/part.ts';
import { sayGap } from '../../assessment/consequences/consequences.ts';
import type { GapRow } from '../../mechanics/consequences/types.ts';

const inches = (si: number): number => fromSi(si, 'in').value;

function barOf(row: GapRow): GapBarData | undefined {
  const { after, verdict } = row;
  if (after === undefined || verdict === undefined) return undefined;
  return {
    id: `gap-${row.name}`,
    label: row.title,
    text: sayGap(after).replace(/ in/g, ''),
    unit: 'in',
    basis: after.basis,
    verdict,
    ...(after.value === undefined
      ? {}
      : { value: inches(after.value), pointText: formatNumber(inches(after.value), 3) }),
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
export function gapBars(gaps: readonly GapRow[]): Component[] {
  const bars = gaps.map(barOf).filter((bar) => bar !== undefined);
  return WORST_FIRST.flatMap((word) => bars.filter((bar) => bar.verdict === word)).map((data) => ({
    template: '/parts/gap-bar',
    data,
  }));
}
