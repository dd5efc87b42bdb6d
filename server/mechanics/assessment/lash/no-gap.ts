import table from '../../../../seeds/setting.json' with { type: 'json' };
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN } from '../../kit/si.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { Headline, NotToRun } from '../assessment.ts';
import { keyOf, listed, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Bounds, Evidence, ValvePlace } from '../evidence.ts';
import { notRunSaid } from './burns.ts';

/** Solid lifters, or a card that asks for a lash where nobody said. */
const hasLash = ({ engine, card }: Evidence, { valve }: ValvePlace): boolean =>
  engine.lifter === undefined
    ? card[sideOfValve(valve)].lash !== undefined
    : !isHydraulicLifter(engine.lifter);

/** What is done about it, with the engine left still. */
export const backOffSaid = ({ engine }: Evidence): string =>
  `back its adjuster off with the engine left still until there is a gap, look at ${ADJUSTER_WORDS[adjusterKind(engine)].lock}, and read the gap.`;

const THINNEST_LEAF = table.thinnestLeaf.value * IN;

/** None, or one that the thinnest leaf did not go into and no other did either. */
const isNoGap = ({ value, low, high = value }: Bounds): boolean =>
  high !== undefined &&
  (high <= EQUAL || (value === undefined && low === undefined && high <= THINNEST_LEAF + EQUAL));

/** Valves with an adjuster whose newest line has no gap; where a shim sets it that is told. */
export const withoutGap = <Valve extends ValvePlace>(
  valves: readonly Valve[],
  evidence: Evidence,
): Valve[] =>
  hasShims(evidence)
    ? []
    : valves.filter((valve) => {
        return isNoGap(usableLash(evidence, valve)?.gap ?? {}) && hasLash(evidence, valve);
      });

/** One line for all of them. */
export function noGapHeadlines(shut: readonly ValvePlace[]): Headline[] {
  if (shut.length === 0) return [];
  return [
    {
      id: 'headline:lash-no-gap',
      about: { of: 'build' },
      step: 'adjuster',
      sentence: `No gap at ${listed(shut.map(placeOf))}: ${shut.length === 1 ? 'whether the valve is held open, and how far, is' : 'whether these valves are held open, and how far, is'} not known. ${shut.length === 1 ? 'It is' : 'They are'} not run so.`,
    },
  ];
}

/** How far a valve without a gap is held open nobody knows: it is not run until there is one. */
export const noGapNotToRun = (shut: readonly ValvePlace[], evidence: Evidence): NotToRun[] =>
  shut.map((valve) => ({
    id: `not-to-run:no-lash:${keyOf(valveSubject(valve))}`,
    what: 'run',
    about: valveSubject(valve),
    sentence: notRunSaid(valve),
    wayOut: upperFirst(backOffSaid(evidence)),
  }));
