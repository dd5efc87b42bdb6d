import type { Entry } from './entry.ts';

const usedIn = ({ path, body }: Entry): string[] =>
  [...`${path} ${JSON.stringify(body)}`.matchAll(/\$([^"/$]+)/g)].map(([, name = '']) => name);

const waitsFor = (entry: Entry): string[] => [...(entry.after ?? []), ...usedIn(entry)];

/** The entries in the wanted order, each after what it waits for. */
function sorted(entries: readonly Entry[], wanted: readonly number[]): Entry[] {
  const left = wanted.map((at) => entries[at]).filter((entry) => entry !== undefined);
  const kept = new Set<string>();
  const done: Entry[] = [];
  while (left.length > 0) {
    const at = left.findIndex((entry) => waitsFor(entry).every((name) => kept.has(name)));
    const [entry] = left.splice(at, 1);
    if (at < 0 || entry === undefined)
      throw new Error(`nothing can come next of ${left.map(({ path }) => path).join()}`);
    done.push(entry);
    if (entry.name !== undefined) kept.add(entry.name);
  }
  return done;
}

/** Park and Miller’s generator: the same order in every run. */
function* draws(seed: number): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

function mixed(count: number, seed: number): number[] {
  const draw = draws(seed);
  return Array.from({ length: count }, (_, at) => ({ at, key: draw.next().value }))
    .toSorted((a, b) => a.key - b.key)
    .map(({ at }) => at);
}

/** Three orders in which the same is said. */
export const ORDERS: Readonly<Record<string, (entries: readonly Entry[]) => Entry[]>> = {
  'as it was told': (entries) => sorted(entries, [...entries.keys()]),
  'the last first': (entries) => sorted(entries, [...entries.keys()].reverse()),
  mixed: (entries) => sorted(entries, mixed(entries.length, 17 + entries.length)),
};
