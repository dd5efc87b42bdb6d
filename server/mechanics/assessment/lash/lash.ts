import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { toolAllowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import { lashGrowths } from '../../lash/growth.ts';
import { grewAgain, lashQuestions } from '../../lash/lash-questions.ts';
import type { LashGrowth, LashLine, LashQuestion } from '../../lash/types.ts';
import { unusualLash } from '../../lash/usual-lash.ts';
import type {
  AssessedQuantity,
  AssessedQuestion,
  Headline,
  NotToRun,
  StopReason,
  Subject,
} from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { limitNamed } from '../common/limits.ts';
import { lashLogOf } from '../common/newest-lash.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byPlace, inches, keyOf, placeOf, valveSubject } from '../common/said.ts';
import { wayOutOf } from '../common/way-out.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { LashDetail, LashValveDetail } from './detail.ts';
import { settingDetail } from './setting.ts';
import { shimsOf } from './shims.ts';

const asLine = ({ cylinder, valve, gap, moment, engine, nut }: LashEvidence): LashLine => ({
  cylinder,
  valve,
  gap: { low: gap.value ?? gap.low, high: gap.value ?? gap.high },
  moment,
  engine,
  nut,
});

function valvesOf(evidence: Evidence, most: number): LashValveDetail[] {
  const logged = evidence.lash.filter(({ standing }) => standing).toSorted(byPlace);
  const places = [
    ...new Map(logged.map(({ cylinder, valve }) => [`${cylinder} ${valve}`, { cylinder, valve }])).values(),
  ];
  return places.map((place) => {
    const lines = lashLogOf(evidence, place);
    const [growth] = lashGrowths(lines.map(asLine), most);
    return { ...place, lines, newest: lines.at(-1)?.gap ?? {}, ...defined({ growth }) };
  });
}

const idsAt = (valves: readonly LashValveDetail[], place: ValvePlace | undefined): string[] =>
  valves
    .filter((valve) => place === undefined || placeOf(valve) === placeOf(place))
    .flatMap(({ lines }) => lines.map(({ id }) => id))
    .sort();

function placeIn({ cylinder, valve }: Pick<LashQuestion, 'cylinder' | 'valve'>): ValvePlace | undefined {
  return cylinder === undefined || valve === undefined ? undefined : { cylinder, valve };
}

const LOOK = 'look at nut and stud, the stem’s tip, the roller, both ends of the pushrod and the cup';

/** Of a bucket there is no nut to let go: its gap changes by wear, or as the valve beds into its seat. */
const OF_BUCKET = {
  ask: 'Is something wearing on this valve, or did the shim not seat?',
  test: 'look whether the shim is seated and whole, at the bucket’s face and at the lobe.',
};

/** Under the stop that it is asked for, only what takes no turning settles it. */
const LOOKING: Readonly<Partial<Record<LashQuestion['code'], string>>> = {
  'lash-grew': `With nothing turned, and before the nut is touched: ${LOOK}.`,
  'lash-grew-everywhere':
    'All at once is not one part. With nothing turned: look at the oil, and ask how, by whom and at what heat each was set and read.',
};

/** Whether a setting is what was asked for; either way the log stays as it is. */
const ASKED_FOR: AssessedQuestion['answers'] = [
  { code: 'not-found', label: 'Yes, it is what is asked for', changes: 'The question is settled.' },
  { code: 'found', label: 'No', changes: 'What is asked for is found out before the lash is set again.' },
];

/** A gap that grew again after it was set again is asked strongly: setting it once more hides the cause. */
function question(
  found: LashQuestion,
  again: readonly LashGrowth[],
  valves: readonly LashValveDetail[],
  { answers, engine }: Evidence,
): AssessedQuestion {
  const bucket = engine.gear === 'bucket';
  const place = placeIn(found);
  const about: Subject = place === undefined ? { of: 'build' } : valveSubject(place);
  const stops = again.some((growth) => place === undefined || placeOf(growth) === placeOf(place));
  const looking = stops ? LOOKING[found.code] : undefined;
  return asked(
    {
      ...found,
      ...(bucket && found.code === 'lash-grew' ? OF_BUCKET : {}),
      weight: stops && place !== undefined ? 'strong' : 'weak',
      ...(looking === undefined ? {} : { test: looking, byLooking: true }),
      restsOn: idsAt(valves, place),
    },
    {
      about,
      step: 'adjuster',
      answers,
      choices: [
        {
          code: 'found',
          label: 'Yes',
          changes: 'The cause is known; it is put right before the lash is set again.',
        },
        {
          code: 'not-found',
          label: 'Looked: no',
          changes: 'The next cause is looked for; the lash is not set again.',
        },
      ],
    },
  );
}

/** The gap of the newest line, where it was set, against the card or the usual band of its lifter. */
function unusual({ lines, newest, ...place }: LashValveDetail, evidence: Evidence): AssessedQuestion[] {
  const line = lines.at(-1);
  const { value, low = value, high = value } = newest;
  if (line?.moment !== 'set' || low === undefined || high === undefined) return [];
  const found = unusualLash({
    low,
    high,
    engine: line.engine,
    lifter: evidence.engine.lifter,
    card: evidence.card[sideOfValve(place.valve)].lash,
  });
  if (found === undefined) return [];
  return [
    asked(
      { ...found, weight: 'weak', restsOn: [line.id] },
      { about: valveSubject(place), step: 'adjuster', answers: evidence.answers, choices: ASKED_FOR },
    ),
  ];
}

const aboutValve = (each: AssessedQuestion, growth: ValvePlace): boolean =>
  each.about.of === 'build' || keyOf(each.about) === keyOf(valveSubject(growth));

function stopOf(
  growth: LashGrowth,
  questions: readonly AssessedQuestion[],
  valves: readonly LashValveDetail[],
): StopReason {
  const about = valveSubject(growth);
  const own = questions.filter((each) => aboutValve(each, growth));
  const newest = valves
    .find((valve) => placeOf(valve) === placeOf(growth))
    ?.lines.findLast(({ moment }) => moment === 'found');
  const answered = own.some((each) => each.answered !== undefined);
  return {
    id: `stop:lash-grew-again:${keyOf(about)}`,
    code: 'lash-grew-again',
    about,
    sentence: `Do not turn it: the lash of ${placeOf(growth)} grew again after it was set again.`,
    ...wayOutOf(LOOK, answered),
    from: 'readings',
    ...(newest === undefined ? {} : { entryId: newest.id, line: newest.line }),
    answered,
    restsOn: idsAt(valves, growth),
  };
}

/** One figure of a gap is as good as its feeler. */
function boundsWithin(gap: Bounds): Bounds {
  const off = toolAllowance('feeler');
  return gap.value === undefined ? gap : { value: gap.value, low: gap.value - off, high: gap.value + off };
}

function quantity({ cylinder, valve, lines, newest }: LashValveDetail): AssessedQuantity {
  const line = lines.at(-1);
  const heat = line?.engine === 'not-said' || line === undefined ? 'hot or cold not said' : line.engine;
  return {
    id: `lash:${cylinder}-${valve}`,
    name: 'Lash',
    about: valveSubject({ cylinder, valve }),
    dimension: 'length',
    ...boundsWithin(newest),
    basis: 'measured',
    conditions: [heat, line?.moment === 'set' ? 'as it was set' : 'as it was found'],
    lacks: line?.engine === 'not-said' ? ['whether the engine was hot or cold'] : [],
    restsOn: line === undefined ? [] : [line.id],
  };
}

const OF_GROWTH: ReadonlySet<string> = new Set(['lash-grew', 'lash-closed', 'lash-heat-differs']);

/** What it is now, and what it did: one that was set again since has not grown to what it is now. */
function toldNow({ lines, newest }: LashValveDetail, { code, size = '' }: AssessedQuestion): string {
  if (lines.at(-1)?.moment !== 'set' || !OF_GROWTH.has(code)) return `${gapSaid(newest)} now. ${size}`;
  return `set again to ${gapSaid(newest)}. Before that: ${size}`;
}

/** It grew once, was set again and has held since: its cause was not found by that. */
function heldSince({ growth, newest, ...place }: LashValveDetail): Headline[] {
  const about = valveSubject(place);
  if (growth?.before === undefined || growth.low === undefined) return [];
  const way = growth.low < 0 ? 'closed' : 'grown';
  const since = Math.abs(growth.low) < 0.0005 * IN ? 'held' : `${way} by ${inches(Math.abs(growth.low))}`;
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `Lash of ${placeOf(place)}, ${gapSaid(newest)} now. It grew by ${inches(growth.before)} before it was set again, and has ${since} since. Why it grew is not known.`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
}

/** One line for each valve whose lash grew or closed past what is ordinary. */
function headline(valve: LashValveDetail, questions: readonly AssessedQuestion[]): Headline[] {
  const about = valveSubject(valve);
  const [own] = questions.filter((each) => keyOf(each.about) === keyOf(about));
  if (own === undefined) return heldSince(valve);
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `Lash of ${placeOf(valve)}, ${toldNow(valve, own)} ${own.ask}`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
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
  const questions = [
    ...lashQuestions(growths, limit.value).map((found) => question(found, again, valves, evidence)),
    ...valves.flatMap((valve) => unusual(valve, evidence)),
  ];
  return {
    quantities: [...valves.map(quantity), ...shims.quantities],
    judgements: [],
    questions,
    stop: again.map((growth) => stopOf(growth, questions, valves)),
    headlines: [...valves.flatMap((valve) => headline(valve, questions)), ...shims.headlines],
    notToRun: shims.notToRun,
    detail: {
      shims: shims.detail,
      limit,
      valves,
      questionIds: questions.map(({ id }) => id),
      setting: settingDetail(evidence),
    },
  };
}
