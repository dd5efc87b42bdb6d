import { allKept, type KeptSet, withAllSums } from '../common/kept.ts';
import { inches } from '../common/said.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import { onlyWorkedOut, tooFarClosed, tooFarPressed } from './bottomed.ts';
import { keptPreloads, turnsPressed } from './lifters.ts';
import { type Band, bandIn } from './over-band.ts';
import { pastGap, pastGapSaid } from './past-gap.ts';
import { pastBottom, setSaid } from './said.ts';

type Found = ReturnType<typeof tooFarPressed>;

/** Of each kind of sum, and of each sum, whether its turns hold a valve open: also those that were only worked out. */
export function sumsTooFar(known: Evidence): Found[][] {
  const evidence = withAllSums(known);
  const preloads = keptPreloads(evidence);
  const pressed = turnsPressed(evidence, bandIn(preloads));
  const ofTurns = allKept(evidence, 'turns').map((kept): Found => {
    const own = pressed.filter(({ line }) => line === kept.line);
    return [...own.flatMap(tooFarPressed), ...tooFarClosed(kept, pastGap(kept, evidence))];
  });
  return [preloads.map(tooFarPressed), ofTurns];
}

/** What is told of turns that hold a valve open, instead of the turn. */
export function tooFarSaid(kept: KeptSet<TurnsEvidence>, band: Band, evidence: Evidence): string | undefined {
  const pressed = turnsPressed(evidence, band).find(({ line }) => line === kept.line);
  if (pressed !== undefined && pastBottom(pressed.set) !== undefined) return setSaid(pressed.set);
  const past = pastGap(kept, evidence);
  return past === undefined
    ? undefined
    : `These turns close the lash by ${inches(past.closes)}, ${pastGapSaid(past)}: they ${past.isSure ? '' : 'may '}hold the valve open. Back off before the engine is turned.`;
}

/** Sums that no adjuster was turned by are set aside: nothing is told of them, and what they answered is asked again. */
export function withOnlyWorkedOut(evidence: Evidence): Evidence {
  const answered = onlyWorkedOut(sumsTooFar(evidence).flat(), evidence);
  const aside = new Set(answered.flatMap(({ id, lifted }) => (lifted ? [id] : [])));
  if (aside.size === 0) return evidence;
  return {
    ...evidence,
    workings: evidence.workings.map((working) =>
      aside.has(working.id) ? { ...working, onlyWorkedOut: true as const } : working,
    ),
  };
}
