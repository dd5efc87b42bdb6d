import type { AssessedQuantity, Headline, Subject } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import { keyOf } from '../common/said.ts';
import type { Evidence, PeakEvidence, StopEvidence } from '../evidence.ts';
import { countingPeaks } from './counting.ts';
import { shiftSaid } from './pointer-said.ts';
import { questionsOf, type TimingAsked } from './questions.ts';
import {
  againstSaid,
  degrees,
  isOut,
  isWithinWheel,
  type Lined,
  ofSide,
  readOf,
  stopFor,
  WHEEL,
  withoutError,
} from './readings.ts';

export interface TimingDetail {
  /** Whether every centreline that was kept stands on a top dead centre that was proved. */
  readonly proved: boolean;
  readonly questionIds: readonly string[];
}

/** A peak that is told, with what it stands on. */
interface ToldPeak {
  readonly peak: Lined<PeakEvidence>;
  readonly stop: StopEvidence | undefined;
  readonly asked: TimingAsked;
  /** All that was read of this lobe. */
  readonly read: readonly PeakEvidence[];
}

const isOpen = ({ asked: { pointer, pointerWas }, peak, stop }: ToldPeak): boolean =>
  pointer !== undefined && pointerWas === undefined && !peak.righted && isOut(stop);

/** Said to have been shifted, and nobody has read the stop alike since: that is what proves it. */
const isNotReadSince = ({ peak, stop }: ToldPeak): boolean => peak.shifted === true && isOut(stop);

/** Said in answer to the question it is the same as said with the reading: neither proves the pointer. */
const saidShifted = (peak: Lined<PeakEvidence>, { pointerWas }: TimingAsked): Lined<PeakEvidence> =>
  pointerWas === 'shifted' && !peak.righted ? { ...peak, shifted: true } : peak;

const isProved = (told: ToldPeak): boolean =>
  told.stop !== undefined && !isOpen(told) && !isNotReadSince(told);

/** Which gap to the piston it takes from, on its own side of top dead centre, and which one it gives to. */
function costSaid(early: number): string {
  const other = 'A gap read at another timing no longer holds.';
  return early > 0
    ? `Advance costs intake gap to the piston, least some 10° after top dead centre, and gives the exhaust as much. ${other}`
    : `Retard costs exhaust gap to the piston, least some 10° before top dead centre, and gives the intake as much. ${other}`;
}

const where = ({ side, centreline }: PeakEvidence): string =>
  `${degrees(centreline)}° ${side === 'intake' ? 'after' : 'before'} TDC`;

/** What the figure is worth where the pointer may have been left: the other figure, beside it. */
function pointerSaid(told: ToldPeak): string {
  const { peak, stop } = told;
  if (stop === undefined)
    return ' But top dead centre is not proved: nobody has set the pointer against a positive stop.';
  if (isNotReadSince(told))
    return ` But top dead centre is not proved: the stop had the pointer ${degrees(stop.correction)}° out, and no reading of it was kept after it was shifted. Read it again, until it reads ${degrees(stop.trueReading)}° on both sides.`;
  if (!isOpen(told)) return '';
  const other = withoutError(peak, stop);
  const against = againstSaid(other.advance);
  return ` But top dead centre is not proved: the stop had the pointer ${degrees(stop.correction)}° out. If it was left so, the peak is ${where(other)}${against === '' ? '' : `, ${against}`}.`;
}

/** While nobody knows which reading holds, what the earliest and the latest of them would cost stands. */
function worstSaid(read: readonly PeakEvidence[]): string {
  const advances = read.flatMap(({ advance }) => advance ?? []);
  const ends = [...new Set([Math.max(0, ...advances), Math.min(0, ...advances)])];
  return ends
    .filter((advance) => !isWithinWheel(advance))
    .map((advance) => ` If it is ${againstSaid(advance)}: ${costSaid(advance)}`)
    .join('');
}

/** Why no word against the card is told yet; nothing where one may be. */
function doubtSaid({ peak, asked, read }: ToldPeak): string | undefined {
  const of = ({ about }: { readonly about: Subject }) => keyOf(about) === peak.side;
  const differ = asked.differ.find((each) => of(each) && inDoubt(each));
  if (differ !== undefined)
    return `${differ.size ?? ''} Nobody has said which of them holds: no word against the card yet.${worstSaid(read)}`;
  const unusual = asked.unusual.find((each) => of(each) && inDoubt(each));
  if (unusual === undefined) return undefined;
  return `By what was read the ${peak.side} peaks ${where(peak)}. ${unusual.size ?? ''} No word against the card yet: was each told from the right side of TDC?`;
}

function sentenceOf(told: ToldPeak): string {
  const doubt = doubtSaid(told);
  if (doubt !== undefined) return doubt;
  const { peak } = told;
  const against = againstSaid(peak.advance);
  const moved = peak.advance !== undefined && !isWithinWheel(peak.advance);
  const said = `The ${peak.side} peaks ${where(peak)}, give or take ${degrees(WHEEL)}°${against === '' ? '' : `: ${against}`}.`;
  return `${said}${moved ? ` ${costSaid(peak.advance)}` : ''}${pointerSaid(told)}`;
}

function headlineOf(told: ToldPeak): Headline {
  const { side } = told.peak;
  return {
    id: `headline:timing:${side}`,
    about: { of: 'side', valve: side },
    step: 'timing',
    sentence: sentenceOf(told),
    quantityId: `timing:centreline:${side}`,
  };
}

/** The stop alone, before any lobe was read. */
function stopHeadline(stop: StopEvidence | undefined, peaks: readonly PeakEvidence[]): Headline[] {
  if (stop === undefined || peaks.length > 0) return [];
  return [
    {
      id: 'headline:timing:stop',
      about: { of: 'build' },
      step: 'timing',
      sentence: isOut(stop)
        ? `The pointer is ${degrees(stop.correction)}° out: ${shiftSaid(stop)} of the stop.`
        : 'The stop reads alike both ways: top dead centre is proved.',
    },
  ];
}

function quantityOf(told: ToldPeak): AssessedQuantity {
  const { peak, stop } = told;
  const { side, centreline } = peak;
  const other = stop === undefined || !isOpen(told) ? centreline : withoutError(peak, stop).centreline;
  return {
    id: `timing:centreline:${side}`,
    name: `Centreline of the ${side}`,
    about: { of: 'side', valve: side },
    dimension: 'angle',
    value: centreline,
    low: Math.min(centreline, other) - WHEEL,
    high: Math.max(centreline, other) + WHEEL,
    basis: 'measured',
    conditions: [
      peak.fromEvents ? 'from its events' : 'from equal drop',
      ...(peak.righted && peak.shifted !== true && isOut(stop) ? ['the pointer’s error taken off'] : []),
    ],
    lacks: isProved(told) ? [] : ['top dead centre by a positive stop'],
    restsOn: [],
  };
}

/**
 * What was read of the cam's timing: where each lobe peaks, which gap to the piston that costs, and whether top dead
 * centre was proved for it.
 *
 * @param evidence everything on the record, in SI; of several readings of one lobe the one that was kept last counts
 * @returns the centreline of each lobe with its sentence, and what its readings ask
 *
 * Validity: one camshaft; a wheel on the crank.
 * Source: common practice, no published source; which gap an advance costs by a cam maker’s pages (trade practice 2.8).
 */
export function timingPart(evidence: Evidence): PartSaid<TimingDetail> {
  const read = readOf(evidence);
  const peaks = countingPeaks(read, evidence);
  const asked = questionsOf(read, peaks, evidence);
  const told = peaks.map((each): ToldPeak => {
    const peak = saidShifted(each, asked);
    return { peak, stop: stopFor(read, peak), asked, read: ofSide(read, peak.side) };
  });
  return {
    quantities: told.map(quantityOf),
    judgements: [],
    questions: asked.all,
    stop: [],
    headlines: [...stopHeadline(read.stops.at(-1), peaks), ...told.map(headlineOf)],
    detail: { proved: told.every(isProved), questionIds: asked.all.map(({ id }) => id) },
  };
}
