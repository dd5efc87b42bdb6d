import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { answersOf } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { byId, byPlace, inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ScanEvidence } from '../evidence.ts';
import { bendIn } from '../gaps/gap-bend.ts';
import { sinkingNeeds } from '../gaps/sinks.ts';
import { camThen } from '../timing/cam-then.ts';
import { errorOf, isSoFar, scanned } from './scanned.ts';

/** Read with the same arms, and everything else that changes a gap alike. */
const stateOf = (scan: ScanEvidence): string =>
  [
    placeOf(scan),
    scan.arms,
    scan.armId ?? '',
    scan.spring,
    scan.lifter,
    scan.lash,
    scan.lashSetting ?? '',
  ].join(' ');

/** The least of a scan, and how far off it may be: by its tool, and by more where its steps are uneven or a reading stands apart. */
function leastOf(scan: ScanEvidence): { readonly value: number; readonly half: number } | undefined {
  const found = scanned(scan);
  const { value, high } = found.least;
  if (isSoFar(found) || value === undefined) return undefined;
  return { value, half: Math.max(errorOf(scan), (high ?? value) - value) };
}

interface Apart {
  readonly one: ScanEvidence;
  readonly other: ScanEvidence;
  /** Read alike they come to no more than that. */
  readonly within: number;
  readonly low: number;
  readonly high: number;
}

/** The larger one can’t be the gap of the smaller, whatever it allows for: what bends under it, and the lash that was in. */
function excludes(larger: ScanEvidence, smaller: ScanEvidence, evidence: Evidence): boolean {
  if (larger.lash === 'not-said' || sinkingNeeds(larger, evidence).length > 0) return false;
  const { low } = scanned(larger).least;
  const { high } = scanned(smaller).least;
  const bends = bendIn({ spring: larger.spring, kind: 'piston-to-valve' }, evidence);
  return low !== undefined && high !== undefined && low - bends > high + EQUAL;
}

const isOfSameArms = (one: ScanEvidence, other: ScanEvidence): boolean =>
  one.arms === other.arms && one.armId === other.armId && placeOf(one) === placeOf(other);

/**
 * Two scans that can't both be right: alike in all and far apart, or read otherwise and so far apart that no gap lies in
 * both.
 */
function apart(one: ScanEvidence, other: ScanEvidence, evidence: Evidence): Apart[] {
  const [a, b] = [leastOf(one), leastOf(other)];
  if (a === undefined || b === undefined) return [];
  const within = a.half + b.half;
  if (Math.abs(a.value - b.value) <= within + EQUAL) return [];
  const found = { one, other, within, low: Math.min(a.value, b.value), high: Math.max(a.value, b.value) };
  if (stateOf(one) === stateOf(other)) return [found];
  const [smaller, larger] = a.value < b.value ? [one, other] : [other, one];
  return isOfSameArms(one, other) && excludes(larger, smaller, evidence) ? [found] : [];
}

/** Those that can be compared: one that was read before the cam was moved is of another engine. */
const standing = (evidence: Evidence): ScanEvidence[] =>
  (evidence.scans ?? []).filter((scan) => scan.standing && camThen(scan, evidence)?.moved !== true);

function pairs(scans: readonly ScanEvidence[], evidence: Evidence): Apart[] {
  const sorted = scans.toSorted((a, b) => byPlace(a, b) || byId(a, b));
  return sorted.flatMap((one, index) =>
    sorted.slice(index + 1).flatMap((other) => apart(one, other, evidence)),
  );
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'changed',
    holds: true,
    label: 'Yes, something was changed',
    changes: 'The scan of the old state is struck out, with the reason; until then the least of all stands.',
  },
  {
    code: 'not-changed',
    holds: true,
    label: 'Nothing was changed',
    changes: 'They scatter by that much: read it once more, and the least of all stands.',
  },
];

/** One of them was short, and its stop was lifted to read it again: what the other says waits for the answer. */
const isReadAgain = (found: readonly Apart[], { call }: Evidence): boolean =>
  (call.stopsLifted ?? []).some(
    ({ stopId, entryId }) =>
      stopId.startsWith('stop:gap-short:') &&
      found.some(({ one, other }) => one.id === entryId || other.id === entryId),
  );

/** One question of a valve whose scans can't all be right, by the two that are furthest apart. */
export function repeatsAsked(evidence: Evidence): AssessedQuestion[] {
  const found = pairs(standing(evidence), evidence);
  const places = [...new Set(found.map(({ one }) => placeOf(one)))];
  return places.flatMap((place) => {
    const here = found.filter(({ one }) => placeOf(one) === place);
    const [worst] = here.toSorted((a, b) => b.high - b.low - (a.high - a.low) || byId(a.one, b.one));
    if (worst === undefined) return [];
    const { one, within, low, high } = worst;
    const ids = [...new Set(here.flatMap((pair) => [pair.one.id, pair.other.id]))];
    return [
      asked(
        {
          code: 'scans-apart',
          weight: isReadAgain(here, evidence) ? 'strong' : 'weak',
          ask: `Was anything changed between the scans of ${placeOf(one)}: base, lifter, timing, or the valve itself?`,
          size: `One has its least at ${inches(low)}, another at ${inches(high)}. Read alike they come within ${inches(within)}.`,
          test: 'Say what was done between them.',
          byLooking: true,
          restsOn: ids,
        },
        {
          about: valveSubject(one),
          step: 'scan',
          answers: evidence.answers,
          choices: CHOICES,
        },
      ),
    ];
  });
}

/** How far the scans that were read like this one lie apart, unless it was said that something was changed between them. */
export function apartOf(scan: ScanEvidence, evidence: Evidence): number {
  const alike = pairs(
    standing(evidence).filter((each) => stateOf(each) === stateOf(scan)),
    evidence,
  );
  if (alike.length === 0) return 0;
  const explained = repeatsAsked(evidence).some(
    (question) =>
      question.about.of === 'valve' &&
      placeOf(question.about) === placeOf(scan) &&
      chosenOf(question) === 'changed',
  );
  return explained ? 0 : Math.max(...alike.map(({ low, high }) => high - low));
}

const pointsOf = ({ points }: ScanEvidence): string =>
  points
    .map(({ crankAngle, gap: { value, low, high } }) => [crankAngle, value, low, high].join(' '))
    .sort()
    .join(',');

/** Every figure of two valves alike: nobody reads that, a column was copied. */
export function copiesAsked(evidence: Evidence): AssessedQuestion[] {
  const scans = standing(evidence).toSorted((a, b) => byPlace(a, b) || byId(a, b));
  return scans.flatMap((scan, index) => {
    const twin = scans
      .slice(0, index)
      .find((each) => placeOf(each) !== placeOf(scan) && pointsOf(each) === pointsOf(scan));
    if (twin === undefined || scan.points.length < 3) return [];
    const sides =
      sideOfValve(twin.valve) === sideOfValve(scan.valve) ? '' : ', and one of them opens as the other shuts';
    return [
      asked(
        {
          code: 'scan-copied',
          weight: 'strong',
          ask: `Was ${placeOf(scan)} read by itself, or are these the figures of ${placeOf(twin)}?`,
          size: `All ${scan.points.length} gaps are the same, at the same crank angles${sides}.`,
          test: 'Look at the list as it was written: which valve did the plunger stand on?',
          byLooking: true,
          restsOn: [scan.id, twin.id],
        },
        {
          about: valveSubject(scan),
          step: 'scan',
          among: scan.id,
          answers: evidence.answers,
          choices: answersOf('scan-copied'),
        },
      ),
    ];
  });
}
