import { allowance } from '../../kit/allowances.ts';
import { type GrowthTold, growthTold } from '../../lash/growth.ts';
import type { LashGrowth } from '../../lash/types.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';
import { hydraulicSaid } from './on-hydraulic.ts';

/** Settled, they say nothing of the lash any more. */
const DOUBTS: ReadonlySet<string> = new Set(['lash-unlikely', 'found-twice', 'lash-order']);

const OF_GROWTH: ReadonlySet<string> = new Set(['lash-grew', 'lash-closed', 'lash-heat-differs']);

/** What it is now, and what it did: one that was set again since has not grown to what it is now. */
function toldNow(
  { lines, newest, grewAgain }: LashValveDetail,
  { code, size = '' }: AssessedQuestion,
): string {
  const last = lines.at(-1);
  if (!OF_GROWTH.has(code)) return `${gapSaid(newest)} now. ${size}`;
  if (last?.moment === 'set') return `set again to ${gapSaid(newest)}. Before that: ${size}`;
  const before = grewAgain === undefined || grewAgain.id === last?.id ? '' : 'Before that: ';
  return `${gapSaid(newest)} now. ${before}${size}`;
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

/** One line for each valve whose lash grew or closed past what is ordinary, or of which nothing counts yet. */
export function headline(valve: LashValveDetail, questions: readonly AssessedQuestion[]): Headline[] {
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
  if (valve.hydraulic !== undefined) return said(hydraulicSaid(valve, valve.newest, valve.hydraulic));
  const [own] = questions
    .filter((each) => keyOf(each.about) === keyOf(about))
    .filter(({ code }) => code !== 'sum-against-log')
    .filter((each) => !DOUBTS.has(each.code) || inDoubt(each));
  if (own === undefined) return heldSince(valve);
  if (own.code === 'found-twice') return said(own.ask);
  if (own.code === 'lash-unlikely' || own.code === 'lash-order') return said(doubtSaid(valve, own));
  return said(`Lash of ${placeOf(valve)}, ${toldNow(valve, own)} ${own.ask}`);
}
