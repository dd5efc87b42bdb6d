import { byPlace, placeOf } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { camAsked, camInGap } from '../timing/cam-then.ts';

interface GapOf extends ValvePlace {
  /** The cam was moved after it. */
  readonly gone: boolean;
}

/** Valves whose gap to the piston was read with the cam elsewhere, and of which none that holds was read. */
export function gapsGone(evidence: Evidence): ValvePlace[] {
  const all: GapOf[] = [
    ...(evidence.scans ?? [])
      .filter(({ standing }) => standing)
      .map((scan) => ({
        cylinder: scan.cylinder,
        valve: scan.valve,
        gone: camAsked(scan, evidence).some(({ answered }) => answered?.found === true),
      })),
    ...evidence.sheet
      .filter(({ standing, kind, scan }) => standing && kind === 'piston-to-valve' && scan === undefined)
      .map((entry) => ({
        cylinder: entry.cylinder,
        valve: entry.valve,
        gone: camInGap(entry, evidence)?.moved === true,
      })),
  ];
  const places = [...new Map(all.map((each) => [placeOf(each), each])).values()];
  return places
    .filter((place) => all.filter((each) => placeOf(each) === placeOf(place)).every(({ gone }) => gone))
    .toSorted(byPlace)
    .map(({ cylinder, valve }) => ({ cylinder, valve }));
}
