import { type CallContext, valveName } from '../../call/context.ts';
import { withArms } from '../../mechanics/assessment/scans/with-arms.ts';
import type { GapScan } from '../../records/gap-scans/gap-scan-table.ts';

/** `1 intake, with the arms that are off since`: raw readings say with which arms, as what is told of them does. */
export function scanNamed(scan: GapScan, { assessment }: CallContext): string {
  const { scans } = assessment.details.scans;
  const said = scans.find(({ scanId }) => scanId === scan.id)?.withArms;
  const arms = said ?? withArms({ arms: scan.arms });
  return `${valveName(scan)}${arms === '' ? '' : `, ${arms}`}`;
}
