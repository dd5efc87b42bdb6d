import type { Evidence, ScanEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import type { ScanDetail } from '../../../../server/mechanics/assessment/scans/detail.ts';
import { scansPart } from '../../../../server/mechanics/assessment/scans/scans.ts';
import { DEG } from '../../../../server/mechanics/kit/si.ts';
import type { Assessed } from './law.ts';

const EQUAL = 1e-9;

const standing = ({ scans = [] }: Evidence): ScanEvidence[] => scans.filter((scan) => scan.standing);
const detailOf = ({ assessment }: Assessed, { id }: ScanEvidence): ScanDetail | undefined =>
  assessment.details.scans.scans.find(({ scanId }) => scanId === id);

/** A lift read with the lash in carries it: its low end is that without lash, once, and the rest is as read. */
export function lashOfScans(assessed: Assessed): string[] {
  const { evidence } = assessed;
  return standing(evidence).flatMap((scan) => {
    const { lash, lashSetting, id } = scan;
    const read = detailOf(assessed, scan)?.least;
    if (lash !== 'set' || lashSetting === undefined || read?.low === undefined) return [];
    const atZero: ScanEvidence = { ...scan, lash: 'zero' };
    const zero = scansPart({ ...evidence, scans: [atZero] }).detail.scans[0]?.least;
    const off = (zero?.low ?? Number.NaN) - read.low - lashSetting;
    return [
      ...(Math.abs(off) < EQUAL ? [] : [`${id}: the lash is not off its low end once`]),
      ...(zero?.high === read.high && zero?.value === read.value
        ? []
        : [`${id}: the lash is taken off elsewhere too`]),
    ];
  });
}

/** What a scan was read under that allows no word but short. */
function unfit(scan: ScanEvidence, evidence: Evidence): string[] {
  const figures = scan.points.filter(({ gap }) => gap.value !== undefined);
  const soft =
    scan.lifter === 'hydraulic' ||
    (scan.lifter === 'not-said' && !(evidence.engine.lifter?.startsWith('solid') ?? false));
  const angles = new Set(figures.map(({ crankAngle }) => Math.round((crankAngle / DEG) * 100)));
  const least = figures.toSorted((a, b) => (a.gap.value ?? 0) - (b.gap.value ?? 0))[0];
  const ends = figures.map(({ crankAngle }) => crankAngle);
  const atEnd =
    least !== undefined && (least.crankAngle === Math.min(...ends) || least.crankAngle === Math.max(...ends));
  return [
    ...(soft ? ['the lifter sinks, or may'] : []),
    ...(scan.lash === 'not-said' ? ['the lash is not said'] : []),
    ...(scan.lash === 'set' && scan.lashSetting === undefined ? ['the lash that was in is not known'] : []),
    ...(angles.size < 3 ? ['fewer than three crank angles'] : []),
    ...(atEnd ? ['the least is at an end'] : []),
  ];
}

/** No scan is clear or close against the conditions it was read under. */
export function conditionsOfScans(assessed: Assessed): string[] {
  return standing(assessed.evidence).flatMap((scan) => {
    const word = detailOf(assessed, scan)?.word;
    const why = unfit(scan, assessed.evidence);
    return why.length > 0 && (word === 'clear' || word === 'close')
      ? [`${scan.id}: ${word}, though ${why.join(', ')}`]
      : [];
  });
}

/** Every scan that stands is told: with a least, or with what it lacks. */
export const scansAreTold = (assessed: Assessed): string[] =>
  standing(assessed.evidence).flatMap((scan) => {
    const told = detailOf(assessed, scan);
    const said = assessed.assessment.headlines.some(({ id }) => id === `headline:scan:${scan.id}`);
    const empty = told?.word === undefined && told?.lacks.length === 0;
    return told === undefined || !said || empty ? [`${scan.id}: it is not told, or not what it lacks`] : [];
  });
