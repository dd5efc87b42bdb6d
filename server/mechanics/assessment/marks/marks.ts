import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { INK } from '../../tip-mark/least-width.ts';
import { limitNamed } from '../common/limits.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId, byPlace, placeOf } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { againstStand } from './against-stand.ts';
import type { MarksDetail } from './detail.ts';
import { leastSweepOf } from './least-sweep.ts';
import { lengthsUnlike } from './lengths-unlike.ts';
import { type MarkedValve, markedValve } from './marked-valve.ts';
import { markHeadline, markJudgement, sweepQuantity } from './said.ts';
import { triedOnOne } from './tried-on-one.ts';

/** How they are mounted is asked once, with the first valve whose marks raise it. */
const askedOnce = (valves: readonly MarkedValve[]): MarkedValve[] =>
  valves.map((each, at) => {
    const before = new Set(valves.slice(0, at).flatMap(({ questions }) => questions.map(({ id }) => id)));
    const questions = each.questions.filter(({ id }) => !before.has(id));
    return { ...each, questions, valve: { ...each.valve, questionIds: questions.map(({ id }) => id) } };
  });

/**
 * Marks of other valves that these may be set against: of the same valve on other cylinders; and of the other side, which
 * stands next to it on many a head, where the least that its arm can sweep is the same as far as ink is read.
 */
function besideOf(
  own: readonly TipMarkEvidence[],
  standing: readonly TipMarkEvidence[],
  leastOf: (mark: TipMarkEvidence) => number | undefined,
): TipMarkEvidence[] {
  const [first] = own;
  if (first === undefined) return [];
  const least = leastOf(first);
  const isNear = (other: number | undefined): boolean =>
    least !== undefined && other !== undefined && Math.abs(other - least) <= INK + EQUAL;
  return standing.filter((mark) => {
    if (mark.valve === first.valve) return mark.cylinder !== first.cylinder;
    return sideOfValve(mark.valve) !== sideOfValve(first.valve) && isNear(leastOf(mark));
  });
}

/** The tip marks of each valve against the least sweep that its lift and arm can have. */
export function marksPart(evidence: Evidence, ratios: readonly ValveRatio[]): PartSaid<MarksDetail> {
  const limit = limitNamed(evidence, 'sweep-over-least');
  const standing = evidence.tipMarks
    .filter((mark) => mark.standing)
    .toSorted((a, b) => byPlace(a, b) || byId(a, b));
  const places = [...new Set(standing.map(placeOf))];
  const each = places.flatMap((place) => {
    const own = standing.filter((mark) => placeOf(mark) === place);
    const beside = besideOf(own, standing, (mark) => leastSweepOf(evidence, mark, ratios).value);
    return markedValve(evidence, { own, beside }, limit, ratios);
  });
  const ofStand = againstStand(triedOnOne(askedOnce(each), evidence), evidence);
  const ofLengths = lengthsUnlike(ofStand.valves, evidence);
  const found = ofLengths.valves;
  return {
    quantities: found.flatMap(({ valve }) => sweepQuantity(valve)),
    judgements: found.flatMap(({ valve }) => markJudgement(valve, limit)),
    questions: [...ofStand.questions, ...ofLengths.questions, ...found.flatMap(({ questions }) => questions)],
    stop: found.flatMap(({ stop }) => stop),
    headlines: found.flatMap(({ valve }) => markHeadline(valve, limit)),
    detail: {
      limit,
      ...defined({ stand: ofStand.stand }),
      valves: found.map(({ valve }) => valve),
      leastOfSides: SIDES.map((side) => ({ side, least: leastSweepOf(evidence, { valve: side }, ratios) })),
    },
  };
}
