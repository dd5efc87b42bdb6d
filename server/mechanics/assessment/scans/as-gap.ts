import { defined } from '../../../../shared/defined.ts';
import { nearSaid } from '../../gap-scan/words.ts';
import type { Evidence, ScanEvidence, SheetEvidence } from '../evidence.ts';
import { type CamThen, camThen } from '../timing/cam-then.ts';
import { needsOfScan } from './needs.ts';
import { questionsOfScan } from './questions.ts';
import { apartOf } from './repeats.ts';
import { errorOf, isSoFar, type Scanned, scanned } from './scanned.ts';

/** Scans that differ say how far one may be off: no figure is finer than what was read twice. */
function withApart(least: Scanned['least'], scan: ScanEvidence, evidence: Evidence): Scanned['least'] {
  const apart = apartOf(scan, evidence);
  return least.low === undefined || apart === 0 ? least : { ...least, low: least.low - apart / 2 };
}

const camSaid = (cam: CamThen | undefined) =>
  cam === undefined ? {} : cam.moved ? { camMoved: true as const } : { withCam: cam.said };

/** The least of a scan as a reading of its gap: it stands beside those that were read in one place. */
function asGap(each: Scanned, evidence: Evidence): SheetEvidence {
  const { scan, least, crankAngle, fit, ofCurve } = each;
  const {
    id,
    line,
    standing,
    cylinder,
    valve,
    tool,
    spring,
    lifter,
    arms,
    armId,
    putOnLater,
    comesOff,
    soldAsThen,
    lash,
    lashSetting,
  } = scan;
  const where = crankAngle === undefined ? '' : ` ${nearSaid(crankAngle)}`;
  const lashSaid = lash === 'zero' ? 'at zero lash' : lash === 'set' ? 'with its lash in' : '';
  return {
    id,
    line,
    standing,
    cylinder,
    valve,
    kind: 'piston-to-valve',
    reading: withApart(least, scan, evidence),
    readAs: scan.readAs,
    tool,
    spring,
    lifter,
    arms,
    ...defined({ armId, putOnLater, comesOff, soldAsThen }),
    scan: {
      where: `${where}${lashSaid === '' ? '' : `, ${lashSaid}`}`,
      lashSaid,
      ...(isSoFar(each) ? { soFar: true } : {}),
      ...camSaid(camThen(scan, evidence)),
      needs: needsOfScan(each, questionsOfScan(each, evidence)),
      stations: fit === undefined ? [] : ofCurve.map(({ crankAngle: at, gap }) => ({ crankAngle: at, gap })),
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
