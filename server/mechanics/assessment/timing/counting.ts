import { defined } from '../../../../shared/defined.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { isWithin } from '../../kit/within.ts';
import { chosenOf } from '../common/chosen.ts';
import type { Evidence } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import { againstStop } from './against-stop.ts';
import { countingOf, differing } from './differ.ts';
import { pointerAsked } from './questions.ts';
import { APART, isOut, isWithinWheel, readOf, stopFor, type TimingRead, withoutError } from './readings.ts';

/** The peak of each lobe that counts, its pointer put right where it was said to have been left. */
export function countingPeaks(read: TimingRead, evidence: Evidence): HeldPeak[] {
  const { pointerWas } = pointerAsked(read, evidence);
  return SIDES.flatMap((side) => countingOf(read, side, evidence) ?? []).map((each) => {
    const peak = againstStop(each, read.stops, evidence)?.peak ?? each;
    const stop = stopFor(read, peak);
    return pointerWas === 'left' && isOut(stop) && !peak.righted ? withoutError(peak, stop) : peak;
  });
}

/** Where the cam is by what was read last, if it was found off its card or was moved. */
export interface CamFound {
  /** Known by the first reading that has it there, so that reading it there again changes nothing. */
  readonly place: string;
  readonly side: HeldPeak['side'];
  /** Earlier than the card, where the card says where the lobe peaks. */
  readonly advance?: number;
  /** Nobody knows which centreline the card has. */
  readonly cardOpen?: true;
}

const isThere = (one: HeldPeak, other: HeldPeak): boolean => {
  if (one.side === other.side) return isWithin(one.centreline - other.centreline, APART);
  // One cam turns both lobes: what the one is early, the other is.
  return (
    one.advance === undefined || other.advance === undefined || isWithin(one.advance - other.advance, APART)
  );
};

const MOVED: readonly (string | undefined)[] = [undefined, 'not-found', 'moved'];

/** Two readings of a lobe stand apart, and nobody said that one was wrong. */
const mayHaveMoved = (read: TimingRead, evidence: Evidence): boolean =>
  SIDES.some((side) =>
    differing(read, side, evidence).some((question) => MOVED.includes(chosenOf(question))),
  );

/** The cam as it was found, where a gap to the piston may have been read with it elsewhere. */
export function camFound(evidence: Evidence): CamFound | undefined {
  const read = readOf(evidence);
  const newest = countingPeaks(read, evidence).toSorted((a, b) => b.line - a.line)[0];
  if (newest === undefined) return undefined;
  const isOff = newest.mayBe.some((advance) => !isWithinWheel(advance));
  if (!isOff && !mayHaveMoved(read, evidence)) return undefined;
  const last = read.peaks.find(({ line }) => line === newest.line) ?? newest;
  const back = read.peaks.toSorted((a, b) => b.line - a.line);
  const until = back.findIndex((peak) => !isThere(peak, last));
  const first = back.slice(0, until < 0 ? back.length : until).at(-1) ?? last;
  return {
    place: first.id,
    side: newest.side,
    ...defined({ advance: newest.advance }),
    ...(newest.advance === undefined && isOff ? { cardOpen: true as const } : {}),
  };
}
