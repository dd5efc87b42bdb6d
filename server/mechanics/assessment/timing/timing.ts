import { DEGREE } from '../../setting-order/timing.ts';
import type { AssessedQuantity, AssessedQuestion, Headline, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import type { Evidence, PeakEvidence, Side, StopEvidence } from '../evidence.ts';

/** A wheel is not read finer than this: common practice. */
const READ = 0.25 * DEGREE;
/** Two lobes of one cam that stand further apart than this are asked about; a wheel is good to a degree each. */
const APART = 2 * DEGREE;

export interface TimingDetail {
  /** Whether every centreline that was kept stands on a top dead centre that was proved. */
  readonly proved: boolean;
  readonly questionIds: readonly string[];
}

type Lined<T> = T & { readonly line: number };

/** `3.25`, `102.75` */
const degrees = (radians: number): string =>
  String(Number(Math.abs(radians / DEGREE).toFixed(2))).replace(/^0\./, '.');

const byLine = (a: { readonly line: number }, b: { readonly line: number }): number => a.line - b.line;

/** The centreline that was kept last of each side, and the readings at the stop that were. */
function readOf({ workings }: Evidence) {
  const lined = workings.toSorted(byLine);
  const peaks = lined.flatMap(({ line, timing }): Lined<PeakEvidence>[] =>
    timing?.of === 'peak' ? [{ ...timing, line }] : [],
  );
  const stops = lined.flatMap(({ line, timing }): Lined<StopEvidence>[] =>
    timing?.of === 'stop' ? [{ ...timing, line }] : [],
  );
  const sides: readonly Side[] = ['intake', 'exhaust'];
  return {
    stop: stops.at(-1),
    peaks: sides.flatMap((side) => peaks.findLast((peak) => peak.side === side) ?? []),
  };
}

/** Why a figure of the wheel is not to be leaned on; nothing where top dead centre was proved for it. */
function unproved(peak: PeakEvidence, stop: Lined<StopEvidence> | undefined): string | undefined {
  if (stop === undefined)
    return 'top dead centre is not proved: the figure is as good as the pointer, which nobody has set against a positive stop';
  if (Math.abs(stop.correction) < READ || peak.righted) return undefined;
  return `top dead centre is not proved: line ${stop.line} has the pointer ${degrees(stop.correction)}° out, and no reading at the stop shows that it was moved`;
}

/** Which gap to the piston it takes from, on its own side of top dead centre, and which one it gives to. */
function costSaid(early: number): string {
  return early > 0
    ? 'Advance costs intake gap to the piston, which is least some 10° after top dead centre, and gives the exhaust as much before it'
    : 'Retard costs exhaust gap to the piston, which is least some 10° before top dead centre, and gives the intake as much after it';
}

function sentenceOf(peak: PeakEvidence, why: string | undefined): string {
  const { side, centreline, advance } = peak;
  const told = `The ${side} peaks ${degrees(centreline)}° ${side === 'intake' ? 'after' : 'before'} TDC`;
  const rests = why === undefined ? '' : `. But ${why}`;
  if (advance === undefined) return `${told}${rests}.`;
  if (Math.abs(advance) < READ) return `${told}: straight up, as the card has it${rests}.`;
  const way = advance > 0 ? 'advanced' : 'retarded';
  return `${told}: ${degrees(advance)}° ${way} against the card. ${costSaid(advance)}; a gap read at another timing no longer holds${rests}.`;
}

function headlineOf(peak: Lined<PeakEvidence>, stop: Lined<StopEvidence> | undefined): Headline {
  const about: Subject = { of: 'side', valve: peak.side };
  return {
    id: `headline:timing:${peak.side}`,
    about,
    step: 'timing',
    sentence: sentenceOf(peak, unproved(peak, stop)),
    quantityId: `timing:centreline:${peak.side}`,
  };
}

function quantityOf(peak: Lined<PeakEvidence>, stop: Lined<StopEvidence> | undefined): AssessedQuantity {
  const why = unproved(peak, stop);
  return {
    id: `timing:centreline:${peak.side}`,
    name: `Centreline of the ${peak.side}`,
    about: { of: 'side', valve: peak.side },
    dimension: 'angle',
    value: peak.centreline,
    basis: 'measured',
    conditions: [
      peak.fromEvents ? 'from its events' : 'from equal drop',
      ...(peak.righted ? ['the pointer’s error taken off'] : []),
    ],
    lacks: why === undefined ? [] : ['top dead centre by a positive stop'],
    restsOn: [],
  };
}

/** One cam turns both lobes: where one says early and the other late, one was read wrong or the card is another cam's. */
function apart(peaks: readonly PeakEvidence[], { answers }: Evidence): AssessedQuestion[] {
  const [intake, exhaust] = (['intake', 'exhaust'] as const).map((side) =>
    peaks.find((peak) => peak.side === side),
  );
  if (intake?.advance === undefined || exhaust?.advance === undefined) return [];
  if (Math.abs(intake.advance - exhaust.advance) <= APART) return [];
  const way = (advance: number) => `${degrees(advance)}° ${advance < 0 ? 'late' : 'early'}`;
  return [
    asked(
      {
        code: 'lobes-apart',
        weight: 'weak',
        ask: 'Were both lobes read on one cam, one wheel and one pointer, each against its own centreline on the card?',
        size: `Against the card the intake is ${way(intake.advance)} and the exhaust ${way(exhaust.advance)}; one cam moves both alike.`,
        test: 'read both again at equal drop, coming up to the lift in running direction each time.',
        restsOn: [],
      },
      { about: { of: 'build' }, step: 'timing', answers },
    ),
  ];
}

/**
 * What was read of the cam's timing: where each lobe peaks, which gap to the piston that costs, and whether top dead
 * centre was proved for it.
 *
 * @param evidence everything on the record, in SI; of several readings of one lobe the one that was kept last counts
 * @returns the centreline of each lobe with its sentence, and what the two ask together
 *
 * Validity: one camshaft; a wheel on the crank.
 * Source: common practice, no published source; which gap an advance costs by a cam maker’s pages (trade practice 2.8).
 */
export function timingPart(evidence: Evidence): PartSaid<TimingDetail> {
  const { stop, peaks } = readOf(evidence);
  const questions = apart(peaks, evidence);
  return {
    quantities: peaks.map((peak) => quantityOf(peak, stop)),
    judgements: [],
    questions,
    stop: [],
    headlines: peaks.map((peak) => headlineOf(peak, stop)),
    detail: {
      proved: peaks.every((peak) => unproved(peak, stop) === undefined),
      questionIds: questions.map(({ id }) => id),
    },
  };
}
