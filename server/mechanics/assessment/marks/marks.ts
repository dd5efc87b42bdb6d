import { defined } from '../../../../shared/defined.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { limitNamed } from '../common/limits.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId, byPlace, placeOf } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence } from '../evidence.ts';
import { againstStand } from './against-stand.ts';
import type { MarksDetail } from './detail.ts';
import { leastSweepOf } from './least-sweep.ts';
import { lengthsUnlike } from './lengths-unlike.ts';
import { type MarkedValve, markedValve } from './marked-valve.ts';
import { markHeadline, markJudgement, sweepQuantity } from './said.ts';

/** How they are mounted is asked once, with the first valve whose marks raise it. */
const askedOnce = (valves: readonly MarkedValve[]): MarkedValve[] =>
  valves.map((each, at) => {
    const before = new Set(valves.slice(0, at).flatMap(({ questions }) => questions.map(({ id }) => id)));
    const questions = each.questions.filter(({ id }) => !before.has(id));
    return { ...each, questions, valve: { ...each.valve, questionIds: questions.map(({ id }) => id) } };
  });

/** The tip marks of each valve against the least sweep that its lift and arm can have. */
export function marksPart(evidence: Evidence, ratios: readonly ValveRatio[]): PartSaid<MarksDetail> {
  const limit = limitNamed(evidence, 'sweep-over-least');
  const standing = evidence.tipMarks
    .filter((mark) => mark.standing)
    .toSorted((a, b) => byPlace(a, b) || byId(a, b));
  const places = [...new Set(standing.map(placeOf))];
  const each = places.flatMap((place) => {
    const own = standing.filter((mark) => placeOf(mark) === place);
    const beside = standing.filter(({ cylinder, valve }) =>
      own.some((mark) => mark.valve === valve && mark.cylinder !== cylinder),
    );
    return markedValve(evidence, { own, beside }, limit, ratios);
  });
  const ofStand = againstStand(askedOnce(each), evidence);
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
