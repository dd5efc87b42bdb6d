import type { AdjusterKind } from '../../lash/adjuster-words.ts';
import { type CauseName, LOCKING, WEAR } from '../../noise/causes.ts';
import { causeSaid } from '../../noise/noise-words.ts';
import type { Candidate } from '../../noise/weigh.ts';
import { listed } from '../common/said.ts';
import type { NoiseCheck } from './detail.ts';

/** So many are named; of more it is said how many there are. */
const MOST_NAMED = 3;
/** Words that can be said in one go. */
const MOST_WORDS = 25;

/** Causes that go by one name while nothing tells them apart. */
const GROUPS: readonly { readonly said: string; readonly causes: readonly CauseName[] }[] = [
  { said: 'the locking', causes: LOCKING },
  { said: 'wear on that valve', causes: WEAR },
];

/** All of the group remain, and as much speaks for each. */
function together(left: readonly Candidate[], causes: readonly CauseName[]): Candidate[] {
  const own = left.filter(({ cause }) => causes.includes(cause));
  const alike = own.every((each) => each.for.length === own[0]?.for.length);
  return own.length === causes.length && alike ? own : [];
}

/** Those that stand first by name: seen bad, else with most for them; those of a whole group by its one name. */
function firstNames(left: readonly Candidate[], kind: AdjusterKind): string[] {
  const seen = left.filter((each) => each.seen);
  const most = Math.max(0, ...left.map((each) => each.for.length));
  const first = seen.length > 0 ? seen : left.filter((each) => each.for.length === most);
  const groups = GROUPS.map(({ said, causes }) => ({ said, own: together(first, causes) }));
  const grouped = groups.flatMap(({ own }) => own);
  return first.flatMap((each): string[] => {
    if (!grouped.includes(each)) return [causeSaid(each.cause, kind)];
    return groups.filter(({ own }) => own[0] === each).map(({ said }) => said);
  });
}

const wordsIn = (text: string): number => text.split(' ').length;

/**
 * What is known of the cause, short enough to be said in one go: what was found, what most speaks for, and what would
 * tell more. It rules on nothing.
 *
 * @param found damage that was told, as clauses, the worst first
 * @param next what is asked or looked at next, where it tells causes apart
 * @param kind what sets the gap of the engine
 */
export function noiseSaid(
  left: readonly Candidate[],
  found: readonly string[],
  next: NoiseCheck | undefined,
  kind: AdjusterKind,
): string {
  const names = firstNames(left, kind);
  const some = left.some((each) => each.seen || each.for.length > 0);
  const most = !some
    ? 'Nothing points to one cause yet.'
    : names.length > MOST_NAMED
      ? `${names.length} causes are alike so far.`
      : `Most speaks for ${listed(names)}.`;
  const tell = next === undefined ? '' : ` What would tell: ${next.thing}.`;
  const said = (clauses: readonly string[], leads: string, more: string): string =>
    `No verdict. ${clauses.length === 0 ? '' : `Found: ${listed(clauses)}. `}${leads}${more}`;
  const forms = [
    said(found.slice(0, 2), most, tell),
    said(found.slice(0, 1), most, tell),
    said(found.slice(0, 2), most, ''),
    said(found.slice(0, 1), most, ''),
  ];
  const short =
    names.length < 2 || !some ? most : `Most speaks for ${names[0]}, and ${names.length - 1} more.`;
  return forms.find((each) => wordsIn(each) <= MOST_WORDS) ?? said(found.slice(0, 1), short, '');
}
