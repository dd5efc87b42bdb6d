import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuantity, AssessedQuestion, Headline } from '../assessment.ts';
import { ended } from '../common/first-said.ts';
import { gapSaid } from '../common/gap-said.ts';
import { lacksSaid } from '../common/lack.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId, byPlace, inches, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { type JudgedGap, judgeGap } from '../sheet/gap.ts';
import { scanGaps } from './as-gap.ts';
import { CAM_THEN, camQuestions } from './cam-then.ts';
import type { ScanDetail, ScansDetail } from './detail.ts';
import { questionsOfScan } from './questions.ts';
import { repeatsAsked } from './repeats.ts';
import { type Scanned, scanned } from './scanned.ts';
import { withArms } from './with-arms.ts';

const isPistonGap = (entry: SheetEvidence): entry is JudgedGap['entry'] => entry.kind === 'piston-to-valve';

/** A scan in one sentence, its word with it; lash, spring and lifter speak through what it needs. */
function saidOf({ entry, gap, limit, word, lacks }: JudgedGap): string {
  const where = entry.scan?.where ?? '';
  const armsOf = withArms(entry);
  const arms = armsOf === '' ? '' : `, ${armsOf}`;
  const end = word ?? `no word yet, it needs ${lacksSaid(lacks).join('; ')}`;
  const least = gap.value === undefined ? '' : entry.scan?.soFar === true ? 'least so far ' : 'least ';
  return `Scan of ${placeOf(entry)}${arms}: ${least}${gapSaid(gap)}${where}, against ${inches(limit.value)}: ${ended(end)}${entry.scan?.withCam ?? ''}`;
}

function detailOf(each: Scanned, judged: JudgedGap, questions: readonly AssessedQuestion[]): ScanDetail {
  const { scan, stations, between, fit } = each;
  const { gap, limit, word, lacks } = judged;
  const [first, last] = fit?.edge === 'none' ? [fit.fitted[0], fit.fitted.at(-1)] : [];
  return {
    scanId: scan.id,
    line: scan.line,
    cylinder: scan.cylinder,
    valve: scan.valve,
    arms: scan.arms,
    withArms: withArms(judged.entry),
    stations: stations.map(({ crankAngle, gap: at }) => ({ crankAngle, gap: at })),
    between,
    least: gap,
    ...defined({ crankAngle: each.crankAngle, edge: fit?.edge, word }),
    ...(fit?.edge === 'none' && first !== undefined && last !== undefined
      ? { curve: { from: first.crankAngle, to: last.crankAngle, bend: fit.bend } }
      : {}),
    limit,
    lacks: lacksSaid(lacks),
    said: saidOf(judged),
    questionIds: questions.map(({ id }) => id),
  };
}

function quantityOf({ least, lacks, ...scan }: ScanDetail, { entry }: JudgedGap): AssessedQuantity {
  const { scan: of } = entry;
  return {
    id: `scan-least:${scan.scanId}`,
    name: 'Least piston to valve of a scan',
    about: valveSubject(scan),
    dimension: 'length',
    ...least,
    basis: 'measured',
    conditions: [
      ...(scan.withArms === '' ? [] : [scan.withArms]),
      ...(entry.spring === 'not-said' ? [] : [`${entry.spring} spring`]),
      ...(entry.lifter === 'not-said' ? [] : [`${entry.lifter} lifter`]),
      ...(of === undefined || of.lashSaid === '' ? [] : [of.lashSaid]),
    ],
    lacks,
    restsOn: [scan.scanId],
  };
}

/** Of arms that are off, or come off: it stands behind what was read with those that are on. */
const isOfOthers = ({ entry: { arms, otherArms } }: JudgedGap): boolean =>
  arms === 'before' || otherArms === 'off-since';

/** Of one valve those of the arms that are on come first, and of these the worst. */
const leastOf = ({ detail: { least } }: { readonly detail: ScanDetail }): number =>
  least.value ?? least.low ?? least.high ?? Number.POSITIVE_INFINITY;

/** Each scan that stands: its least with its interval, its word, and what it is asked. The worst gap of a valve is told by the sheet. */
export function scansPart(evidence: Evidence): PartSaid<ScansDetail> {
  // With what arms each was read stands on its gap, where the sheet has it.
  const onSheet = new Map(evidence.sheet.map((entry) => [entry.id, entry]));
  const gaps = scanGaps(evidence)
    .map((gap) => onSheet.get(gap.id) ?? gap)
    .filter(isPistonGap);
  const found = (evidence.scans ?? [])
    .filter(({ standing }) => standing)
    .flatMap((scan) => {
      const entry = gaps.find(({ id }) => id === scan.id);
      if (entry === undefined) return [];
      const each = scanned(scan);
      const questions = questionsOfScan(each, evidence);
      const judged = judgeGap(entry, evidence);
      return [{ scan, judged, questions, detail: detailOf(each, judged, questions) }];
    })
    .toSorted(
      (a, b) =>
        byPlace(a.scan, b.scan) ||
        Number(isOfOthers(a.judged)) - Number(isOfOthers(b.judged)) ||
        leastOf(a) - leastOf(b) ||
        byId(a.scan, b.scan),
    );
  return {
    quantities: found.map(({ detail, judged }) => quantityOf(detail, judged)),
    judgements: [],
    questions: [
      // What the cam asks it asks once, of all gaps.
      ...found.flatMap(({ questions }) => questions.filter(({ code }) => code !== CAM_THEN)),
      ...camQuestions(evidence),
      ...repeatsAsked(evidence),
    ],
    stop: [],
    headlines: found.map(
      ({ detail }): Headline => ({
        id: `headline:scan:${detail.scanId}`,
        about: valveSubject(detail),
        step: 'scan',
        sentence: upperFirst(detail.said),
        quantityId: `scan-least:${detail.scanId}`,
      }),
    ),
    detail: { scans: found.map(({ detail }) => detail) },
  };
}
