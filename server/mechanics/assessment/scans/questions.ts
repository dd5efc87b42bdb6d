import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { apartSaid, crankSaid, nearSaid } from '../../gap-scan/words.ts';
import { allowance } from '../../kit/allowances.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { answersOf } from '../common/answers-of.ts';
import { asked, type Doubt } from '../common/asked.ts';
import { bareInches, inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { camAsked } from '../timing/cam-then.ts';
import { worstJump } from './jumps.ts';
import { copiesAsked } from './repeats.ts';
import { errorOf, inOrder, type Scanned } from './scanned.ts';

type Found = Omit<Doubt, 'restsOn' | 'code'> & {
  readonly code:
    | 'scan-side-of-tdc'
    | 'scan-far-from-tdc'
    | 'scan-below-nothing'
    | 'scan-angle-twice'
    | 'scan-jumps'
    | 'scan-apart';
};

/** Past this from top dead centre a least gap is asked about. */
const USUAL_WITHIN = allowance('least-gap-within');

/**
 * At top dead centre the piston stands, so that only the valve moves there: an intake that opens still closes the gap,
 * and its least comes after; an exhaust that shuts has had its least before. A wheel's zero may be off by the
 * allowance for timing.
 */
function wrongSide({ scan, fit }: Scanned): Found[] {
  if (fit === undefined || fit.edge !== 'none') return [];
  const late = sideOfValve(scan.valve) === 'intake' ? fit.crankAngle : -fit.crankAngle;
  if (late >= -allowance('cam-timing')) return [];
  const [here, there] = sideOfValve(scan.valve) === 'intake' ? ['before', 'after'] : ['after', 'before'];
  return [
    {
      code: 'scan-side-of-tdc',
      weight: 'strong',
      ask: `Was ${placeOf(scan)} read ${there} top dead centre, or was it the other valve? Its least gap stands ${here}.`,
      size: `The least is ${nearSaid(fit.crankAngle)}. At TDC the piston stands and the valve alone moves, so that an ${scan.valve}’s least comes ${there} it.`,
      test: 'Say which way the crank turned from TDC at the first reading, and which valve the plunger stood on.',
      byLooking: true,
    },
  ];
}

function farFromCentre({ fit, scan }: Scanned): Found[] {
  if (fit === undefined || Math.abs(fit.crankAngle) <= USUAL_WITHIN) return [];
  return [
    {
      code: 'scan-far-from-tdc',
      weight: 'strong',
      ask: `Is the wheel’s zero at the true top dead centre? The least gap of ${placeOf(scan)} stands far from it.`,
      size: `The least is ${nearSaid(fit.crankAngle)}; mostly it is within 25° of TDC (common practice, no published source).`,
      test: 'Check TDC with the positive stop, one way and the other, and read the scan on to the other side of TDC.',
    },
  ];
}

function belowNothing({ scan }: Scanned): Found[] {
  const below = inOrder(scan).filter(({ gap: { value } }) => value !== undefined && value < 0);
  const [first] = below;
  if (first === undefined) return [];
  const clay = scan.tool === 'clay' ? 'Clay has no thickness below nothing. ' : '';
  return [
    {
      code: 'scan-below-nothing',
      weight: 'strong',
      ask: `What does the minus before ${bareInches(Math.abs(first.gap.value ?? 0))} mean on ${placeOf(scan)}: a dash, or that the parts lack so much?`,
      size: `${clay}It was entered as ${asEntered(first.readAs)} at ${crankSaid(first.crankAngle)}. Until it is known it counts as contact.`,
      test: 'With nothing turned: look at what was written down, and say what was measured there.',
      byLooking: true,
    },
  ];
}

/** One crank angle with two gaps that differ by more than the tool errs. */
function readTwice({ scan, stations }: Scanned): Found[] {
  const twice = stations.filter(({ gap, highest }) => highest - gap > 2 * errorOf(scan));
  const [first] = twice;
  if (first === undefined) return [];
  return [
    {
      code: 'scan-angle-twice',
      weight: 'weak',
      ask: `Was ${crankSaid(first.crankAngle)} read twice on ${placeOf(scan)}, or is one of the two another crank angle?`,
      size: `It has ${inches(first.gap)} and ${inches(first.highest)}. The least counts.`,
      test: 'Look at the list as it was written: what comes before and after it?',
      byLooking: true,
    },
  ];
}

/** Of three gaps in a row the middle one lies between, or near: one that stands far off was read or written wrong. */
function jumps({ scan, stations }: Scanned): Found[] {
  const worst = worstJump(stations);
  if (worst === undefined) return [];
  const { station, before, after, off } = worst;
  const leftOut = off > 0 ? ' No curve is laid through it.' : '';
  return [
    {
      code: 'scan-jumps',
      weight: 'strong',
      ask: `Is the gap of ${placeOf(scan)} at ${crankSaid(station.crankAngle)} read and written right?`,
      size: `It is ${inches(station.gap)}, between ${inches(before.gap)} and ${inches(after.gap)} on either side.${leftOut}`,
      test: 'Look at the list as it was written: a digit, a unit, or another angle?',
      byLooking: true,
    },
  ];
}

/** A reading near the least that its neighbours do not bear out: it decides what the least is, or hides it. */
function apart({ scan, fit }: Scanned): Found[] {
  if (fit === undefined || fit.edge !== 'none' || fit.apart === undefined) return [];
  const { station, off } = fit.apart;
  // A gap below nothing is asked about by itself.
  if (station.gap < 0) return [];
  return [
    {
      code: 'scan-apart',
      weight: 'strong',
      ask: `Is the gap of ${placeOf(scan)} at ${crankSaid(station.crankAngle)} right? It ${apartSaid(fit.apart)}.`,
      size:
        off > 0
          ? `It is ${inches(station.gap)}. With it and without it the least is not the same, and what is told holds both.`
          : `It is ${inches(station.gap)}. It is believed until it is put right or struck out.`,
      test: 'Look at the list as it was written, then read that angle again.',
    },
  ];
}

/** What a scan is asked before its least gap is believed. */
export function questionsOfScan(each: Scanned, evidence: Evidence): AssessedQuestion[] {
  const { scan } = each;
  const { answers } = evidence;
  const ofScan = copiesAsked(evidence).filter(
    ({ restsOn, id }) => restsOn.includes(scan.id) && id.includes(scan.id),
  );
  const jumping = jumps(each);
  return [
    ...ofScan,
    ...camAsked(scan, evidence),
    ...[
      ...wrongSide(each),
      ...farFromCentre(each),
      ...belowNothing(each),
      ...readTwice(each),
      ...(jumping.length > 0 ? jumping : apart(each)),
    ].map((found) =>
      asked(
        { ...found, knownBy: found.code, restsOn: [scan.id] },
        {
          about: valveSubject(scan),
          step: 'scan',
          among: scan.id,
          answers,
          choices: answersOf(found.code),
        },
      ),
    ),
  ];
}
