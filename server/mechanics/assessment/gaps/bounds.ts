import { toolAllowance } from '../../kit/allowances.ts';
import type { GapBounds } from '../common/gap-said.ts';
import type { SheetEvidence } from '../evidence.ts';

/** One figure is as good as its tool; two gauges are their bounds, and the least of a scan has its own. */
export function boundsOf({ reading, tool, scan }: SheetEvidence): GapBounds {
  if (reading.value === undefined || scan !== undefined) return reading;
  const off = toolAllowance(tool);
  return { value: reading.value, low: reading.value - off, high: reading.value + off };
}
