import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { lowerFirst } from '../common/said.ts';
import type { PeakEvidence, StopEvidence } from '../evidence.ts';
import { degrees, isOfOldPointer, isOut, type Lined, READ, WITHIN } from './read.ts';

/** Why a figure of the wheel is not to be leaned on; nothing where top dead centre was proved for it. */
export function unproved(
  peak: Lined<PeakEvidence>,
  stops: readonly Lined<StopEvidence>[],
): string | undefined {
  const stop = stops.at(-1);
  if (stop === undefined)
    return 'Top dead centre is not proved: nobody has set the pointer against a positive stop.';
  if (isOfOldPointer(peak, stops))
    return 'The pointer was set after that reading: the peak is read once more.';
  return isOut(peak, stop)
    ? `The pointer stood ${degrees(stop.correction)}° out, and no reading at the stop shows that it was moved.`
    : undefined;
}

/** Which gap to the piston it takes from, on its own side of top dead centre, and which one it gives to. */
function costSaid(early: number): string {
  return early > 0
    ? 'Advance costs intake gap to the piston, which is least some 10° after TDC, and gives the exhaust as much.'
    : 'Retard costs exhaust gap to the piston, which is least some 10° before TDC, and gives the intake as much.';
}

/** `3° ± 1° advanced against the card`; within what a wheel tells it is straight up. */
function advanceSaid(advance: number): string {
  if (Math.abs(advance) < READ) return 'straight up, as the card has it';
  const way = advance > 0 ? 'advanced' : 'retarded';
  return Math.abs(advance) <= WITHIN
    ? `${degrees(advance)}° ${way}, which a wheel does not tell from straight up`
    : `${degrees(advance)}° ${way} against the card`;
}

const peakSaid = ({ side, centreline }: PeakEvidence): string =>
  `The ${side} peaks ${degrees(centreline)}° ± ${degrees(WITHIN)}° ${side === 'intake' ? 'after' : 'before'} TDC`;

/** The same peak with the pointer's error taken off: after top dead centre the wheel reads that much too much. */
function withoutError({ side, centreline, advance }: PeakEvidence, { correction }: StopEvidence) {
  const off = side === 'intake' ? -correction : correction;
  return {
    centreline: centreline + off,
    ...(advance === undefined ? {} : { advance: advance + correction }),
  };
}

/** What it would be with the pointer left where it stood at the stop. */
function ifLeftSaid(peak: PeakEvidence, stop: StopEvidence): string {
  const { centreline, advance } = withoutError(peak, stop);
  const told = advance === undefined ? '' : `, ${advanceSaid(advance)}`;
  return `If it was left so, the peak is at ${degrees(centreline)}°${told}.`;
}

function sentencesOf(peak: Lined<PeakEvidence>, stops: readonly Lined<StopEvidence>[]): string[] {
  const { advance } = peak;
  const stop = stops.at(-1);
  const why = unproved(peak, stops);
  const rests = [
    ...(why === undefined ? [] : [`But ${lowerFirst(why)}`]),
    ...(stop !== undefined && isOut(peak, stop) ? [ifLeftSaid(peak, stop)] : []),
  ];
  if (advance === undefined) return [`${peakSaid(peak)}.`, ...rests];
  const left = stop !== undefined && isOut(peak, stop) ? withoutError(peak, stop).advance : undefined;
  // Which gap it costs is told where both ways of taking the pointer say the same.
  const ways = [advance, left ?? advance];
  const costs = ways.every((each) => each > WITHIN) || ways.every((each) => each < -WITHIN);
  return [
    `${peakSaid(peak)}: ${advanceSaid(advance)}.`,
    ...rests,
    ...(Math.abs(advance) < READ ? [] : ['A gap read at another timing no longer holds.']),
    ...(costs ? [costSaid(advance)] : []),
  ];
}

/** A peak that lies where none does is told as read, with what is asked first. */
export function sentenceOf(
  peak: Lined<PeakEvidence>,
  stops: readonly Lined<StopEvidence>[],
  asked: readonly AssessedQuestion[],
): string {
  const [doubt] = asked.filter(
    (each) => inDoubt(each) && each.about.of === 'side' && each.about.valve === peak.side,
  );
  return doubt === undefined
    ? sentencesOf(peak, stops).join(' ')
    : `${peakSaid(peak)} as read: no word yet. First: ${lowerFirst(doubt.ask)}`;
}
