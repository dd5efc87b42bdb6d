import { defined } from '../../../../shared/defined.ts';
import { lashGrowths } from '../../lash/growth.ts';
import { grewAgain } from '../../lash/lash-questions.ts';
import type { LashGrowth, LashLine } from '../../lash/types.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { type FoundTwice, figureOf, foundTwice, gapOf } from '../common/found-twice.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { byArm, lashLogOf, orderQuestions, wholeLogOf } from '../common/lash-log-of.ts';
import { countingLog } from '../common/newest-lash.ts';
import { asItIs, onceEach } from '../common/once.ts';
import { byPlace, keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';
import { foundOnHydraulic } from './on-hydraulic.ts';

/** A line of the log as the mechanics take it. */
export const asLine = ({ cylinder, valve, gap, moment, engine, nut }: LashEvidence): LashLine => ({
  cylinder,
  valve,
  gap: { low: gap.value ?? gap.low, high: gap.value ?? gap.high },
  moment,
  engine,
  nut,
});

/** The id of the stop of a gap that grew again after it was set again. */
export const grewAgainStop = (place: ValvePlace): string =>
  `stop:lash-grew-again:${keyOf(valveSubject(place))}`;

interface GrewAgain {
  readonly growth: LashGrowth;
  readonly line: LashEvidence;
}

/** The gap that was found last of those that had grown again after a reset. */
function grewAgainAt(lines: readonly LashEvidence[], most: number): GrewAgain | undefined {
  return lines
    .flatMap((line, index): GrewAgain[] => {
      if (line.moment !== 'found') return [];
      const growths = lashGrowths(lines.slice(0, index + 1).map(asLine), most);
      return grewAgain(growths, most).map((growth) => ({ growth, line }));
    })
    .at(-1);
}

/** A person lifted what it raised: what was found since counts. */
const isLifted = ({ line }: GrewAgain, { stopsLifted = [] }: Evidence['call']): boolean =>
  stopsLifted.some(({ stopId, entryId }) => stopId === grewAgainStop(line) && entryId === line.id);

/**
 * What became of the gap of one valve. One that grew again after a reset is told until a person has lifted its stop,
 * also where a later reading is right again: that says nothing of why it grew.
 */
function growthOf(
  lines: readonly LashEvidence[],
  ofArms: readonly (readonly LashEvidence[])[],
  most: number,
  evidence: Evidence,
): Pick<LashValveDetail, 'growth' | 'grewAgain'> {
  // What nobody is sure was read or entered right tells no growth; a stop that stands as it was entered stays.
  const sure = lines.filter((line) => !isLashDoubted(evidence, line));
  const [newest] = lashGrowths(sure.map(asLine), most);
  // With whichever arm: another arm takes no stop away.
  const again = ofArms.flatMap((each) => grewAgainAt(each, most) ?? []).at(-1);
  const isNewest = again?.line === lines.findLast(({ moment }) => moment === 'found');
  return again === undefined || (!isNewest && isLifted(again, evidence.call))
    ? defined({ growth: newest })
    : { growth: again.growth, grewAgain: again.line };
}

/** What was put aside says nothing of how a gap grew; while nobody has decided, the widest of a day counts. */
function counts(line: LashEvidence, { holds, lines }: FoundTwice): boolean {
  if (!lines.includes(line)) return true;
  if (holds !== undefined) return holds === line;
  const ofDay = lines.filter(({ day }) => day === line.day).toSorted((a, b) => figureOf(b) - figureOf(a));
  return ofDay[0] === line;
}

/** It is not said yet whether the gap that growth is told of was found before its setting or after. */
const isOpenFor = (order: AssessedQuestion, lines: readonly LashEvidence[]): boolean => {
  const found = lines.findLast(({ moment }) => moment === 'found');
  return (
    inDoubt(order) ||
    (order.answered === undefined && found !== undefined && order.restsOn.includes(found.id))
  );
};

/** The log of one valve, with the newest line of it that counts. */
export interface LashValveRead extends LashValveDetail {
  readonly now?: LashEvidence;
  /** The lines that say what its gap did: without what was put aside, or may have been found before its setting. */
  readonly counted: readonly LashEvidence[];
}

/** The log of every valve that has one. */
export const valvesOf = onceEach(asItIs, (evidence: Evidence, most: number): readonly LashValveRead[] => {
  const logged = evidence.lash.filter(({ standing }) => standing).toSorted(byPlace);
  const places = [
    ...new Map(logged.map(({ cylinder, valve }) => [`${cylinder} ${valve}`, { cylinder, valve }])).values(),
  ];
  return places.map((place) => {
    const lines = wholeLogOf(evidence, place);
    const before = lines.filter((line) => !lashLogOf(evidence, place).includes(line));
    const twice = foundTwice(evidence, place);
    const counting = countingLog(evidence, place);
    const now = counting.at(-1);
    const count = counting.filter((line) => twice === undefined || counts(line, twice));
    const order = orderQuestions(evidence, place);
    const growth = growthOf(count, byArm([...before, ...count]), most, evidence);
    // While it is open which came first no growth is told; a stop that stands as it was entered stays.
    const isTold = growth.grewAgain !== undefined || !order.some((each) => isOpenFor(each, count));
    const inOrder = count.filter(
      ({ id, moment }) =>
        moment === 'set' || !order.some((each) => isOpenFor(each, count) && each.restsOn.includes(id)),
    );
    const newest = twice === undefined ? (now?.gap ?? {}) : gapOf(twice);
    return {
      ...place,
      lines,
      newest,
      order,
      counted: [...before, ...inOrder],
      ...defined({ now, twice, hydraulic: foundOnHydraulic({ ...place, lines, newest }, evidence) }),
      ...(isTold ? growth : {}),
    };
  });
});

/** The lines of one valve, or of all of them. */
export const idsAt = (valves: readonly LashValveDetail[], place: ValvePlace | undefined): string[] =>
  valves
    .filter((valve) => place === undefined || placeOf(valve) === placeOf(place))
    .flatMap(({ lines }) => lines.map(({ id }) => id))
    .sort();
