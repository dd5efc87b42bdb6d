import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { adjusterKind } from '../../lash/adjuster-words.ts';
import { type GrowthTold, growthTold } from '../../lash/growth.ts';
import type { LashGrowth } from '../../lash/types.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, keyOf, lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { offCardHeadline } from './against-card.ts';
import type { LashValveDetail } from './detail.ts';
import { followsFrom } from './growth-answers.ts';
import { hydraulicSaid } from './on-hydraulic.ts';
import type { LashValveRead } from './valves.ts';

/** Nothing below none is told of one end of it: it may not have changed at all. */
const orNothing = (si: number): string => (si <= EQUAL ? 'nothing' : inches(si));

/** Settled, they say nothing of the lash any more. */
const DOUBTS: ReadonlySet<string> = new Set(['lash-unlikely', 'found-twice', 'lash-order']);

const OF_GROWTH: ReadonlySet<string> = new Set([
  'lash-grew',
  'lash-closed',
  'lash-closed-nut',
  'lash-heat-differs',
  'lash-heat-unsaid',
]);

/** What it is now, and what it did: one that was set again since has not grown to what it is now. */
function toldNow(
  { now: last, newest, grewAgain }: LashValveRead,
  { code, size = '' }: AssessedQuestion,
): string {
  if (!OF_GROWTH.has(code)) return `${gapSaid(newest)} now. ${size}`;
  if (last?.moment === 'set') return `set again to ${gapSaid(newest)}. Before that: ${lowerFirst(size)}`;
  const before = grewAgain === undefined || grewAgain.id === last?.id ? '' : 'Before that: ';
  return `${gapSaid(newest)} now. ${before === '' ? size : `${before}${lowerFirst(size)}`}`;
}

/** What became of it since; nothing where the two are not compared. */
const SINCE: Readonly<Record<GrowthTold, (growth: LashGrowth) => string | undefined>> = {
  'not-compared': () => undefined,
  held: () => ', and has held since',
  grew: ({ low = 0 }) => `, and has grown by ${inches(low)} since`,
  closed: ({ high = 0 }) => `, and has closed by ${inches(-high)} since`,
  'cannot-tell': () =>
    `; whether it has grown since can’t be told, feelers go in steps of ${inches(allowance('lash-as-set'))}`,
};

/** It grew once, was set again and has held since: its cause was not found by that. */
function heldSince({ growth, newest, ...place }: LashValveDetail): Headline[] {
  const about = valveSubject(place);
  if (growth?.before === undefined) return [];
  const since = SINCE[growthTold(growth)](growth);
  if (since === undefined) return [];
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `Lash of ${placeOf(place)}, ${gapSaid(newest)} now. It grew by ${inches(growth.before)} before it was set again${since}. Why it grew is not known.`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
}

/** Nothing is told of a lash that is doubted but the doubt. */
const doubtSaid = (place: ValvePlace, { ask, answered }: AssessedQuestion): string =>
  answered?.found === true
    ? `The lash of ${placeOf(place)} was entered wrong: it is put right, or entered again.`
    : `No lash of ${placeOf(place)} counts yet. ${ask}`;

/** What gauges leave of a growth reaches past what is ordinary, and does not begin there: a finer step tells. */
function openGrowth(
  { growth, lines, newest, twice, ...place }: LashValveDetail,
  limit: number,
): string | undefined {
  const { low, high } = growth ?? {};
  if (low === undefined || high === undefined || twice !== undefined) return undefined;
  if (lines.at(-1)?.moment !== 'found') return undefined;
  const at = `Lash of ${placeOf(place)}, ${gapSaid(newest)} now.`;
  const open = 'whether that is more can’t be told by these gauges. A finer step between them tells.';
  if (low < -limit - EQUAL && high > limit + EQUAL)
    return `${at} It may have closed by up to ${inches(-low)} or grown by up to ${inches(high)}, where ${inches(limit)} is ordinary: which of them can’t be told by these gauges. A finer step between them tells.`;
  if (low <= limit + EQUAL && high > limit + EQUAL)
    return `${at} It grew by ${orNothing(low)} to ${inches(high)}, where ${inches(limit)} is ordinary: ${open}`;
  if (high >= -limit - EQUAL && low < -limit - EQUAL)
    return `${at} It closed by ${orNothing(-high)} to ${inches(-low)}, where ${inches(limit)} is ordinary: ${open}`;
  return undefined;
}

/** One line for each valve whose lash grew or closed past what is ordinary, or of which nothing counts yet. */
export function headline(
  valve: LashValveRead,
  questions: readonly AssessedQuestion[],
  limit: number,
  { evidence, byCard }: { readonly evidence: Evidence; readonly byCard: boolean },
): Headline[] {
  const about = valveSubject(valve);
  const said = (sentence: string): Headline[] => [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
  if (valve.hydraulic !== undefined)
    return said(hydraulicSaid(valve, valve.newest, valve.hydraulic, evidence));
  const [own] = questions
    .filter((each) => keyOf(each.about) === keyOf(about))
    .filter(({ code }) => code !== 'sum-against-log')
    // It is what is asked for: nothing is told of it any more.
    .filter((each) => each.code !== 'lash-unusual' || chosenOf(each) !== 'not-found')
    .filter((each) => !DOUBTS.has(each.code) || inDoubt(each));
  if (own === undefined) {
    const open = openGrowth(valve, limit);
    if (open !== undefined) return said(open);
    const held = heldSince(valve);
    return held.length > 0 || !byCard ? held : offCardHeadline(evidence, valve);
  }
  if (own.code === 'found-twice') return said(own.ask);
  if (own.code === 'lash-unlikely' || own.code === 'lash-order') return said(doubtSaid(valve, own));
  const chosen = chosenOf(own);
  const nut = valve.growth?.nut ?? 'not-looked';
  const follows =
    chosen === undefined ? undefined : followsFrom(own.code, chosen, nut, adjusterKind(evidence.engine));
  return said(`Lash of ${placeOf(valve)}, ${toldNow(valve, own)} ${follows ?? own.ask}`);
}
