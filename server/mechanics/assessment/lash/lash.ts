import { defined } from '../../../../shared/defined.ts';
import { toolAllowance } from '../../kit/allowances.ts';
import { adjusterKind } from '../../lash/adjuster-words.ts';
import { grewAgain, lashQuestions } from '../../lash/lash-questions.ts';
import type { LashQuestion } from '../../lash/types.ts';
import type { AssessedQuantity, AssessedQuestion, NotToRun } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { WHICH_HOLDS } from '../common/found-twice.ts';
import { BUILD } from '../common/kept.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { lashWanted } from '../common/lash-wanted.ts';
import { limitNamed } from '../common/limits.ts';
import type { PartSaid } from '../common/part-said.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import { sidesSwapped } from '../common/sides-swapped.ts';
import type { Bounds, Evidence } from '../evidence.ts';
import { asItIs, ofSum } from './as-it-is.ts';
import { alikeHeadline, alikeNotToRun, closedAlike } from './closed-alike.ts';
import { pastQuestions } from './closings.ts';
import type { LashDetail } from './detail.ts';
import { OF_CLOSING } from './growth-answers.ts';
import { headline } from './headline.ts';
import { noGapHeadlines, noGapNotToRun, withoutGap } from './no-gap.ts';
import { hydraulicLack, ON_HYDRAULIC, tellsOfAdjuster } from './on-hydraulic.ts';
import { doubts, question, unusual } from './questions.ts';
import { settingDetail } from './setting.ts';
import { shimsOf } from './shims.ts';
import { closedGaps, closedHeadline, isSeatOpen, sinkingNotToRun, sinkingOf } from './sinking.ts';
import { stopOf } from './stop.ts';
import { type LashValveRead, valvesOf } from './valves.ts';
import { type LashWork, workOf } from './work.ts';

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
      ...(line === undefined ? ['the gap with the arm that is on now'] : []),
      ...(order.some(inDoubt) ? ['whether it was found before it was set that day'] : []),
      ...hydraulicLack(hydraulic, evidence),
      ...(doubted ? ['whether it was read and entered right'] : []),
      ...(line?.engine === 'not-said' ? ['whether the engine was hot or cold'] : []),
    ],
    restsOn: line === undefined ? [] : [line.id],
  };
}

/** Found at a heat at which it is known what is asked for: it is set against that, and not against another heat. */
function isToldByCard(
  { code, cylinder, valve }: LashQuestion,
  valves: readonly LashValveRead[],
  evidence: Evidence,
): boolean {
  if (code !== 'lash-heat-differs') return false;
  const own = valves.find((each) => each.cylinder === cylinder && each.valve === valve);
  const found = own?.lines.findLast(({ moment }) => moment === 'found');
  return found !== undefined && lashWanted(evidence, found) !== undefined;
}

/** The lash log of each valve: the lash as it is, what it grew by, and what that raises. */
export function lashPart(
  evidence: Evidence,
): PartSaid<LashDetail> & { readonly notToRun: readonly NotToRun[]; readonly work: LashWork } {
  const limit = limitNamed(evidence, 'lash-growth');
  const valves = valvesOf(evidence, limit.value);
  const growths = valves.flatMap(({ growth }) => growth ?? []);
  // How a hydraulic lifter stood decides first whether its gap is one; a stop stays meanwhile.
  const counting = valves.flatMap(({ hydraulic, growth }) =>
    tellsOfAdjuster(hydraulic) ? (growth ?? []) : [],
  );
  const again = grewAgain(growths, limit.value);
  const kind = adjusterKind(evidence.engine);
  const sides = sidesSwapped(evidence);
  const raised = [
    ...(sides === undefined ? [] : [sides.question]),
    ...valves.flatMap((valve) => doubts(valve, evidence)),
    ...valves.flatMap(({ order }) => order),
    ...valves.flatMap(({ twice }) => twice?.question ?? []),
    ...valves.flatMap(({ hydraulic }) => hydraulic ?? []),
    ...lashQuestions(counting, limit.value, kind)
      .filter((found) => !isToldByCard(found, valves, evidence))
      .map((found) => question(found, again, valves, evidence)),
    ...valves.flatMap((valve) => unusual(valve, evidence)),
  ];
  const shut = withoutGap(valves, evidence);
  const closed = closedGaps(valves, limit.value, kind, evidence);
  const alike = closedAlike(sinkingOf(closed), evidence);
  const inOne = new Set(alike?.closed.map(({ valve }) => valve));
  const questions = [
    ...raised,
    ...(alike === undefined ? [] : [alike.question]),
    ...pastQuestions(valves, raised, limit.value, kind, evidence),
    ...sinkingOf(closed).flatMap(({ seat }) => seat ?? []),
    ...closed.flatMap(({ seat }) => (seat === undefined || inDoubt(seat) ? [] : [seat])),
  ];
  const work = workOf(valves, questions, closed, evidence);
  const shims = shimsOf(evidence, work.notSet);
  const elsewhere = new Set([...shims.detail.rows.map(placeOf), ...ofSum(evidence)]);
  const told = valves.map((valve) => {
    const known = closed.find((each) => each.valve === valve);
    if (inOne.has(valve)) return { valve, own: [] };
    const others = (asked: readonly AssessedQuestion[]) =>
      headline(valve, asked, limit.value, {
        evidence,
        // A sum, a shim or both sides at once tell it already.
        byCard: sides === undefined && !elsewhere.has(placeOf(valve)),
      });
    if (known === undefined) return { valve, own: others(questions) };
    const closedSaid = closedHeadline(known, evidence, limit.value);
    // Settled, it goes behind what its gap does now.
    const now =
      known.closing.past && !isSeatOpen(known)
        ? others(questions.filter(({ code }) => !OF_CLOSING.has(code)))
        : [];
    return { valve, own: now.length > 0 ? now : closedSaid };
  });
  const quiet = told.flatMap(({ valve, own }) => (own.length === 0 && !inOne.has(valve) ? [valve] : []));
  return {
    quantities: [...valves.map((valve) => quantity(valve, evidence)), ...shims.quantities],
    judgements: [],
    questions,
    stop: again.map((growth) => stopOf(growth, questions, valves, kind)),
    headlines: [
      ...noGapHeadlines(shut),
      ...(sides?.said === undefined
        ? []
        : [{ id: 'headline:lash-sides', about: BUILD, step: 'adjuster' as const, sentence: sides.said }]),
      ...(alike === undefined ? [] : [alikeHeadline(alike)]),
      ...told.flatMap(({ own }) => own),
      ...asItIs(quiet, evidence, limit),
      ...shims.headlines,
    ],
    work: {
      ...work,
      hydraulic: questions.filter(({ code }) => code === ON_HYDRAULIC),
      ...defined({ sides }),
    },
    notToRun: [
      ...shims.notToRun,
      ...noGapNotToRun(shut, evidence),
      ...(alike === undefined
        ? sinkingNotToRun(closed)
        : [alikeNotToRun(alike), ...sinkingNotToRun(closed.filter(({ valve }) => !inOne.has(valve)))]),
    ],
    detail: {
      shims: shims.detail,
      adjuster: kind,
      limit,
      valves: valves.map(({ now: _, counted: _counted, ...valve }) => valve),
      questionIds: questions.map(({ id }) => id),
      setting: settingDetail(evidence),
    },
  };
}
