import { toolAllowance } from '../../kit/allowances.ts';
import { adjusterKind } from '../../lash/adjuster-words.ts';
import { grewAgain, lashQuestions } from '../../lash/lash-questions.ts';
import type { AssessedQuantity, NotToRun } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { WHICH_HOLDS } from '../common/found-twice.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { limitNamed } from '../common/limits.ts';
import type { PartSaid } from '../common/part-said.ts';
import { valveSubject } from '../common/said.ts';
import type { Bounds, Evidence } from '../evidence.ts';
import { asItIs } from './as-it-is.ts';
import type { LashDetail } from './detail.ts';
import { headline } from './headline.ts';
import { noGapHeadlines, noGapNotToRun, withoutGap } from './no-gap.ts';
import { hydraulicLack } from './on-hydraulic.ts';
import { doubts, question, unusual } from './questions.ts';
import { settingDetail } from './setting.ts';
import { shimsOf } from './shims.ts';
import { sidesSwapped } from './sides-swapped.ts';
import { closedGaps, closedHeadline, sinkingNotToRun } from './sinking.ts';
import { stopOf } from './stop.ts';
import { type LashValveRead, valvesOf } from './valves.ts';

/** One figure of a gap is as good as its feeler. */
function boundsWithin(gap: Bounds): Bounds {
  const off = toolAllowance('feeler');
  return gap.value === undefined ? gap : { value: gap.value, low: gap.value - off, high: gap.value + off };
}

function quantity(
  { cylinder, valve, now, newest, order, twice, hydraulic }: LashValveRead,
  evidence: Evidence,
): AssessedQuantity {
  const line = twice?.holds ?? now;
  const doubted = line !== undefined && isLashDoubted(evidence, line);
  const heat = line?.engine === 'not-said' || line === undefined ? 'hot or cold not said' : line.engine;
  return {
    id: `lash:${cylinder}-${valve}`,
    name: 'Lash',
    about: valveSubject({ cylinder, valve }),
    dimension: 'length',
    ...boundsWithin(newest),
    basis: 'measured',
    conditions: [heat, line?.moment === 'set' ? 'as it was set' : 'as it was found'],
    lacks: [
      ...(twice !== undefined && twice.holds === undefined ? [WHICH_HOLDS] : []),
      ...(order.some(inDoubt) ? ['whether it was found before it was set that day'] : []),
      ...hydraulicLack(hydraulic),
      ...(doubted ? ['whether it was read and entered right'] : []),
      ...(line?.engine === 'not-said' ? ['whether the engine was hot or cold'] : []),
    ],
    restsOn: line === undefined ? [] : [line.id],
  };
}

/** The lash log of each valve: the lash as it is, what it grew by, and what that raises. */
export function lashPart(
  evidence: Evidence,
): PartSaid<LashDetail> & { readonly notToRun: readonly NotToRun[] } {
  const limit = limitNamed(evidence, 'lash-growth');
  const valves = valvesOf(evidence, limit.value);
  const shims = shimsOf(evidence);
  const growths = valves.flatMap(({ growth }) => growth ?? []);
  const again = grewAgain(growths, limit.value);
  const swapped = sidesSwapped(valves, evidence);
  const questions = [
    ...swapped.questions,
    ...valves.flatMap((valve) => doubts(valve, evidence)),
    ...valves.flatMap(({ order }) => order),
    ...valves.flatMap(({ twice }) => twice?.question ?? []),
    ...valves.flatMap(({ hydraulic }) => hydraulic ?? []),
    ...lashQuestions(growths, limit.value, adjusterKind(evidence.engine)).map((found) =>
      question(found, again, valves, evidence),
    ),
    ...valves.flatMap((valve) => unusual(valve, evidence)),
  ];
  const shut = withoutGap(valves, evidence);
  const closed = closedGaps(valves, questions, limit.value);
  const told = valves.map((valve) => {
    const known = closed.find((each) => each.valve === valve);
    return {
      valve,
      own:
        known === undefined
          ? headline(valve, questions, limit.value)
          : closedHeadline(known, evidence, limit.value),
    };
  });
  const quiet = told.flatMap(({ valve, own }) => (own.length === 0 ? [valve] : []));
  return {
    quantities: [...valves.map((valve) => quantity(valve, evidence)), ...shims.quantities],
    judgements: [],
    questions,
    stop: again.map((growth) => stopOf(growth, questions, valves, adjusterKind(evidence.engine))),
    headlines: [
      ...noGapHeadlines(shut),
      ...swapped.headlines,
      ...told.flatMap(({ own }) => own),
      ...asItIs(quiet, evidence, limit),
      ...shims.headlines,
    ],
    notToRun: [...shims.notToRun, ...noGapNotToRun(shut, evidence), ...sinkingNotToRun(closed)],
    detail: {
      shims: shims.detail,
      adjuster: adjusterKind(evidence.engine),
      limit,
      valves: valves.map(({ now: _, ...valve }) => valve),
      questionIds: questions.map(({ id }) => id),
      setting: settingDetail(evidence),
    },
  };
}
