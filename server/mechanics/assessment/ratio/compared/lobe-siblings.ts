import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { isWithin } from '../../../kit/within.ts';
import { figureOf } from '../../common/lot.ts';
import { byId, placeOf } from '../../common/said.ts';
import type { Evidence, SheetEvidence, ValvePlace } from '../../evidence.ts';
import { isTooCoarse, perTurnOf } from '../read/dial.ts';
import type { SetUpKnown } from './known.ts';
import { lobesOfSetUps } from './lobes-read.ts';

/** A caliper on a loose cam reads low, and a rule or a guess tells no lobe from another. */
const tells = (reading: SheetEvidence): boolean => reading.tool !== 'caliper' && !isTooCoarse([reading]);

/** What the sheet has of one lobe: nothing where its readings do not go together. */
function ofSheet(evidence: Evidence, readings: readonly SheetEvidence[]): (number | undefined)[] {
  return readings.length === 0 ? [] : [figureOf(readings, perTurnOf(evidence, readings)).value];
}

/** One lobe read on the sheet and in set-ups: the middle of what was read, where nothing of it stands apart. */
function together(values: readonly (number | undefined)[]): number[] {
  const known = values.filter((value) => value !== undefined);
  if (known.length === 0 || known.length < values.length) return [];
  if (!isWithin(Math.max(...known) - Math.min(...known), 2 * allowance('repeat'))) return [];
  return [known.reduce((sum, each) => sum + each, 0) / known.length];
}

/**
 * Lobes of the other valves of its side, each once, as they were read at the lifter: on the sheet and in set-ups, in
 * whatever order they came. One of which nobody can say what it reads is none.
 */
export function siblingLobes(evidence: Evidence, known: readonly SetUpKnown[], place: ValvePlace): number[] {
  const isSibling = (each: ValvePlace) =>
    sideOfValve(each.valve) === sideOfValve(place.valve) && placeOf(each) !== placeOf(place);
  const entered = evidence.sheet
    .filter((each) => each.standing && each.kind === 'lobe-lift' && isSibling(each) && tells(each))
    .toSorted(byId);
  const ofSetUps = lobesOfSetUps(known).filter(isSibling);
  const places = [...new Set([...entered, ...ofSetUps].map(placeOf))];
  return places.flatMap((at) =>
    together([
      ...ofSheet(
        evidence,
        entered.filter((each) => placeOf(each) === at),
      ),
      ...ofSetUps.filter((each) => placeOf(each) === at).map(({ value }) => value),
    ]),
  );
}
