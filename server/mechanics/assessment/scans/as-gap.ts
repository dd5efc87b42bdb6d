import { nearSaid } from '../../gap-scan/words.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { needsOfScan } from './needs.ts';
import { questionsOfScan } from './questions.ts';
import { errorOf, type Scanned, scanned } from './scanned.ts';

/** The least of a scan as a reading of its gap: it stands beside those that were read in one place. */
function asGap(each: Scanned, evidence: Evidence): SheetEvidence {
  const { scan, least, crankAngle, fit, stations } = each;
  const { id, line, standing, cylinder, valve, tool, spring, lifter, arms, armId, lash, lashSetting } = scan;
  const where = crankAngle === undefined ? '' : ` ${nearSaid(crankAngle)}`;
  const lashSaid = lash === 'zero' ? 'at zero lash' : lash === 'set' ? 'with its lash in' : '';
  return {
    id,
    line,
    standing,
    cylinder,
    valve,
    kind: 'piston-to-valve',
    reading: least,
    readAs: scan.readAs,
    tool,
    spring,
    lifter,
    arms,
    ...(armId === undefined ? {} : { armId }),
    scan: {
      where: `${where}${lashSaid === '' ? '' : `, ${lashSaid}`}`,
      lashSaid,
      needs: needsOfScan(each, questionsOfScan(each, evidence)),
      stations: fit === undefined ? [] : stations.map(({ crankAngle: at, gap }) => ({ crankAngle: at, gap })),
      error: errorOf(scan),
      lash: lash === 'set' ? (lashSetting ?? 0) : 0,
    },
  };
}

/** The scans of a build as readings of piston to valve. */
export const scanGaps = (evidence: Evidence): SheetEvidence[] =>
  (evidence.scans ?? []).map((scan) => asGap(scanned(scan), evidence));

/** The same evidence with each scan's least among the gaps of its sheet, where the worst of them is looked for. */
export function withScans(evidence: Evidence): Evidence {
  const gaps = scanGaps(evidence);
  return gaps.length === 0 ? evidence : { ...evidence, sheet: [...evidence.sheet, ...gaps] };
}
