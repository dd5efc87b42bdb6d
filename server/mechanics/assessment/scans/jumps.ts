import type { Station } from '../../gap-scan/stations.ts';
import { allowance } from '../../kit/allowances.ts';

/** A gap that stands this far from between its neighbours is no curve. */
const JUMP = allowance('scan-jump');
/** Neighbours further apart than this say nothing of what lies between them. */
const NEAR = allowance('scan-neighbours');

/** A gap of a scan that stands far off from between its neighbours: over them where `off` is above zero. */
interface Jump {
  readonly station: Station;
  readonly before: Station;
  readonly after: Station;
  readonly off: number;
}

/** Of three gaps in a row the middle one lies between, or near: the one that stands farthest off. */
export function worstJump(stations: readonly Station[]): Jump | undefined {
  const found = stations.flatMap((station, index): Jump[] => {
    const [before, after] = [stations[index - 1], stations[index + 1]];
    if (before === undefined || after === undefined) return [];
    // A gap below nothing is asked about by itself.
    if ([before, station, after].some(({ gap }) => gap < 0) || after.crankAngle - before.crankAngle > NEAR)
      return [];
    const off = station.gap - (before.gap + after.gap) / 2;
    return Math.abs(off) > JUMP ? [{ station, before, after, off }] : [];
  });
  return found.toSorted(
    (a, b) => Math.abs(b.off) - Math.abs(a.off) || a.station.crankAngle - b.station.crankAngle,
  )[0];
}

/** So many make a curve. */
const FEWEST = 3;

/**
 * The gaps that a curve goes through: none that stands far over its neighbours, since a curve through it would dip beside
 * it to where nothing was read. One that stands under them is believed until it is put right.
 */
export function withoutJumps(stations: readonly Station[]): readonly Station[] {
  const jump = worstJump(stations);
  if (jump === undefined || jump.off < 0 || stations.length <= FEWEST) return stations;
  return withoutJumps(stations.filter((each) => each !== jump.station));
}
