import { isAnswer } from '../../../../shared/begins-with.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { feelersBetween } from '../../kit/say-inches.ts';
import { adjusterKind } from '../../lash/adjuster-words.ts';
import { type GrowthTold, growthTold } from '../../lash/growth.ts';
import { hasClosed } from '../../lash/lash-questions.ts';
import type { LashGrowth } from '../../lash/types.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { foundOf, inDoubt, partsOfId } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { lashSaid } from '../common/gap-said.ts';
import { grewBy } from '../common/grew-by.ts';
import { feeler, keyOf, lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { besideCard, offCardHeadline } from './against-card.ts';
import type { LashValveDetail } from './detail.ts';
import { ANSWERS, followsFrom, OF_CLOSING, PUT_RIGHT } from './growth-answers.ts';
import { hydraulicSaid } from './on-hydraulic.ts';
import { WITH_OTHER_ARM } from './sinking.ts';
import type { LashValveRead } from './valves.ts';

/** Nothing below none is told of one end of it: it may not have changed at all. */
const fromNothing = (low: number, high: number): string =>
  low <= EQUAL ? `nothing to ${feeler(high)}` : feelersBetween(low, high);

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
  { now: last, newest, grewAgain, growth }: LashValveRead,
  { code, size = '' }: AssessedQuestion,
  limit: number,
): string {
  if (!OF_GROWTH.has(code)) return `${lashSaid(newest)} now. ${size}`;
  if (last?.moment === 'set') return `set again to ${lashSaid(newest)}. Before that: ${lowerFirst(size)}`;
  const isPast = OF_CLOSING.has(code) && !(growth !== undefined && hasClosed(growth, limit));
  const isOld = isPast || (grewAgain !== undefined && grewAgain.id !== last?.id);
  return `${lashSaid(newest)} now. ${isOld ? `Before that: ${lowerFirst(size)}` : size}`;
}

/** What became of it since; nothing where the two are not compared. */
const SINCE: Readonly<Record<GrowthTold, (growth: LashGrowth) => string | undefined>> = {
  'not-compared': () => undefined,
  held: () => ', and has held since',
  grew: (growth) => `, and has grown by ${grewBy(growth)} since`,
  closed: ({ high = 0 }) => `, and has closed by ${feeler(-high)} since`,
  'cannot-tell': () =>
    `; whether it has grown since can’t be told, feelers go in steps of ${feeler(allowance('lash-as-set'))}`,
};

/** What was answered of its growth is known still, once nothing is asked of it any more. */
function whySaid(place: ValvePlace, { answers }: Evidence): string {
  const about = keyOf(valveSubject(place));
  const own = answers
    .filter(({ questionId }) => {
      const parts = partsOfId(questionId);
      return parts?.code === 'lash-grew' && parts.about === about;
    })
    .toSorted((a, b) => a.line - b.line)
    .at(-1);
  if (own === undefined) return 'Why it grew is not known.';
  if (isAnswer(own.answer, PUT_RIGHT)) return 'Its cause was found and put right, as was answered.';
  return foundOf(own, ANSWERS['lash-grew']) === true
    ? 'Its cause was found, as was answered.'
    : 'Why it grew is not known.';
}

/** It grew once, was set again and has held since: its cause was not found by that. */
function heldSince({ growth, newest, ...place }: LashValveDetail, evidence: Evidence): Headline[] {
  const about = valveSubject(place);
  if (growth?.before === undefined) return [];
  const since = SINCE[growthTold(growth)](growth);
  if (since === undefined) return [];
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `Lash of ${placeOf(place)}, ${lashSaid(newest)} now. It grew by ${feeler(growth.before)} before it was set again${since}. ${whySaid(place, evidence)}`,
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
  const at = `Lash of ${placeOf(place)}, ${lashSaid(newest)} now.`;
  const open = 'whether that is more can’t be told by these gauges. A finer step between them tells.';
  if (low < -limit - EQUAL && high > limit + EQUAL)
    return `${at} It may have closed by up to ${feeler(-low)} or grown by up to ${feeler(high)}, where ${feeler(limit)} is ordinary: which of them can’t be told by these gauges. A finer step between them tells.`;
  if (low <= limit + EQUAL && high > limit + EQUAL)
    return `${at} It grew by ${fromNothing(low, high)}, where ${feeler(limit)} is ordinary: ${open}`;
  if (high >= -limit - EQUAL && low < -limit - EQUAL)
    return `${at} It closed by ${fromNothing(-high, -low)}, where ${feeler(limit)} is ordinary: ${open}`;
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
  const last = valve.lines.at(-1);
  if (valve.now === undefined && last !== undefined)
    return said(
      `Lash of ${placeOf(valve)}, ${WITH_OTHER_ARM}: ${lashSaid(last.gap)} belongs to the arm before. Set it again, and enter it.`,
    );
  const [own] = questions
    .filter((each) => keyOf(each.about) === keyOf(about))
    // What was found at its seat is told with what its gap did.
    .filter(({ code }) => code !== 'sum-against-log' && code !== 'seat-looked')
    // It is what is asked for: nothing is told of it any more.
    .filter((each) => each.code !== 'lash-unusual' || chosenOf(each) !== 'not-found')
    .filter((each) => !DOUBTS.has(each.code) || inDoubt(each));
  if (own === undefined) {
    const open = openGrowth(valve, limit);
    if (open !== undefined) return said(`${open}${byCard ? besideCard(evidence, valve) : ''}`);
    const held = heldSince(valve, evidence);
    return held.length > 0 || !byCard ? held : offCardHeadline(evidence, valve);
  }
  if (own.code === 'found-twice') return said(own.ask);
  if (own.code === 'lash-unlikely' || own.code === 'lash-order') return said(doubtSaid(valve, own));
  const chosen = chosenOf(own);
  const nut = valve.growth?.nut ?? 'not-looked';
  const follows =
    chosen === undefined ? undefined : followsFrom(own.code, chosen, nut, adjusterKind(evidence.engine));
  return said(`Lash of ${placeOf(valve)}, ${toldNow(valve, own, limit)} ${follows ?? own.ask}`);
}
