import { type Chance, chanceFrom } from '../../mechanics/explain-readings/random.ts';
import type { Mutated } from './mutated.ts';
import { isList, type Plain, valueAt, withAt } from './plain-data.ts';
import { isSame } from './same-said.ts';
import { asEvidence, varied } from './varied.ts';
import type { Vocabulary } from './vocabulary.ts';

/** How long it is looked for builds, in builds: the same number gives the same builds on every machine. */
export interface Effort {
  /** Builds that are drawn to come by what nothing came by so far. */
  readonly drawn: number;
  /** Builds that come by a fault and on which it is tried before it counts as not noticed by these. */
  readonly tried: number;
  /** Variations that are drawn for each fault that is not noticed then. */
  readonly variations: number;
}

interface Known {
  readonly build: Plain;
  readonly size: number;
  readonly reached: ReadonlySet<string>;
}

export interface Found {
  readonly builds: readonly Plain[];
  readonly mutants: number;
  /** Come by no build. */
  readonly neverReached: readonly string[];
  /** Come by, and the same was said. */
  readonly notNoticed: readonly string[];
}

/** So many builds whose assessment is kept at hand. */
const MOST_SAID = 300;
/** So many more faults are tried on a variation that was drawn for one. */
const NEIGHBOURS = 6;

const sizeOf = (build: Plain): number => JSON.stringify(build).length;

/** A build that is smaller and still does it: members and entries are taken out one after another. */
function thinned(build: Plain, usual: Plain, does: (build: Plain) => boolean): Plain {
  let now = build;
  const keep = (smaller: Plain) => {
    if (sizeOf(smaller) < sizeOf(now) && does(smaller)) now = smaller;
  };
  const names = Object.keys(asEvidence(build));
  for (const name of names) {
    const empty = valueAt(usual, [name]);
    if (name !== 'limits' && valueAt(now, [name]) !== undefined) keep(withAt(now, [name], empty));
  }
  for (const name of names) {
    const items = valueAt(now, [name]);
    if (!isList(items)) continue;
    if (items.length > 7) {
      keep(withAt(now, [name], items.slice(0, Math.ceil(items.length / 2))));
      keep(withAt(now, [name], items.slice(Math.floor(items.length / 2))));
    }
    const left = valueAt(now, [name]);
    if (isList(left) && left.length > 1 && left.length <= 7)
      for (let at = left.length - 1; at >= 0; at--) keep(withAt(now, [name, at], undefined));
  }
  return now;
}

/** Looks for builds that notice the faults: small ones first, and only such as notice what those before did not. */
export class Search {
  readonly #mutated: Mutated;
  readonly #usual: Plain;
  readonly #words: Vocabulary;
  readonly #chance: Chance;
  readonly #known: Known[] = [];
  readonly #reached = new Set<string>();
  readonly #said = new Map<Plain, unknown>();
  readonly #kept: Known[] = [];
  readonly #say: (line: string) => void;

  constructor(mutated: Mutated, usual: Plain, words: Vocabulary, seed: number, say: (line: string) => void) {
    this.#mutated = mutated;
    this.#usual = usual;
    this.#words = words;
    this.#chance = chanceFrom(seed);
    this.#say = say;
  }

  /** What is known of it, if it breaks nothing. */
  #look(build: Plain): Known | undefined {
    const now = this.#mutated.by(asEvidence(build));
    if (this.#said.size > MOST_SAID) this.#said.clear();
    this.#said.set(build, now?.said);
    return now === undefined ? undefined : { build, size: sizeOf(build), reached: now.reached };
  }

  #isNew = (known: Known | undefined): known is Known =>
    known !== undefined && [...known.reached].some((id) => !this.#reached.has(id));

  /** Keeps in mind a build that comes by something new, as small as it may be. */
  #learn(build: Plain): void {
    const known = this.#look(build);
    if (!this.#isNew(known)) return;
    const fresh = [...known.reached].filter((id) => !this.#reached.has(id));
    const small = thinned(build, this.#usual, (each) => {
      const now = this.#look(each)?.reached;
      return now !== undefined && fresh.every((id) => now.has(id));
    });
    const least = this.#look(small) ?? known;
    this.#known.push(least);
    for (const id of least.reached) this.#reached.add(id);
  }

  /** Whether something else is said of it with the fault. */
  #notices(build: Plain, mutant: string): boolean {
    if (!this.#said.has(build)) this.#look(build);
    const said = this.#said.get(build);
    return said !== undefined && !isSame(said, this.#mutated.with(mutant, asEvidence(build)));
  }

  /** The first of these that notices it. */
  #noticing(mutant: string, among: readonly Known[]): Known | undefined {
    return among.find(({ build }) => this.#notices(build, mutant));
  }

  #coming = (mutant: string, among: readonly Known[]): readonly Known[] =>
    among.filter(({ reached }) => reached.has(mutant));

  #keep(known: Known, mutant: string): void {
    const small = thinned(known.build, this.#usual, (each) => this.#notices(each, mutant));
    this.#kept.unshift(this.#look(small) ?? known);
  }

  /** Keeps these, whatever they notice. */
  keepOf(builds: readonly Plain[]): void {
    for (const known of builds.map((build) => this.#look(build)).filter((each) => each !== undefined)) {
      this.#kept.push(known);
      for (const id of known.reached) this.#reached.add(id);
    }
  }

  /** Begins with these builds, small ones first. */
  learnFrom(builds: readonly Plain[]): void {
    const sized = builds.map((build) => ({ build, size: sizeOf(build) })).toSorted((a, b) => a.size - b.size);
    for (const { build } of sized) this.#learn(build);
  }

  /** The builds that are in mind: together they come by all that any did. */
  known = (): readonly Plain[] => this.#known.map(({ build }) => build);

  /** `keep` is given what was found so far, time and again: a search that is broken off goes on from there. */
  find(effort: Effort, keep: (builds: readonly Plain[]) => void): Found {
    const { mutants } = this.#mutated;
    this.#say(`${this.#known.length} builds come by ${this.#reached.size} of ${mutants.length}`);
    for (let drawn = 0; drawn < effort.drawn; drawn++)
      this.#learn(varied(this.#chance.pick(this.#known).build, this.#chance, this.#words));
    this.#say(`with ${effort.drawn} variations ${this.#known.length} come by ${this.#reached.size}`);
    const open = this.#tryKnown(effort.tried);
    this.#say(`${this.#kept.length} kept, ${open.length} not noticed`);
    const found = () => this.#kept.map(({ build }) => build);
    keep(found());
    const left = this.#tryVariations(open, effort.variations, () => {
      keep(found());
    });
    this.#say(`${this.#kept.length} kept, ${left.length} not noticed`);
    return {
      builds: found(),
      mutants: mutants.length,
      neverReached: mutants.map(({ id }) => id).filter((id) => !this.#reached.has(id)),
      notNoticed: left,
    };
  }

  /** Those that none of the builds in mind notices. */
  #tryKnown(most: number): string[] {
    const open: string[] = [];
    const sized = this.#known.toSorted((a, b) => a.size - b.size);
    for (const { id } of this.#mutated.mutants) {
      if (
        !this.#reached.has(id) ||
        this.#noticing(id, this.#coming(id, this.#kept).slice(0, most)) !== undefined
      )
        continue;
      const coming = this.#coming(id, sized);
      const few = coming.filter((_, at) => at % Math.ceil(coming.length / most) === 0);
      const by = this.#noticing(id, few);
      if (by === undefined) open.push(id);
      else this.#keep(by, id);
    }
    return open;
  }

  /**
   * Variations of what comes by it, each tried on some of its neighbours too. Every second one goes on from the one
   * before: what takes an answer, and an entry after it, is not found in one step.
   */
  #tryVariations(open: readonly string[], variations: number, eachTime: () => void): string[] {
    const left = new Set(open);
    const walks = new Map<string, Plain>();
    for (let time = 0; time < variations; time++) {
      for (const id of open) {
        const coming = left.has(id) ? this.#coming(id, [...this.#kept, ...this.#known]) : [];
        if (coming.length === 0) continue;
        const from = time % 2 === 1 ? walks.get(id) : undefined;
        const build = from ?? this.#chance.pick(coming).build;
        const drawn = this.#look(varied(build, this.#chance, this.#words));
        if (drawn === undefined) continue;
        if (drawn.reached.has(id)) walks.set(id, drawn.build);
        this.#tryOn(drawn, id, left);
      }
      eachTime();
    }
    return [...left];
  }

  #tryOn(drawn: Known, first: string, left: Set<string>): void {
    const others = [...left].filter((id) => id !== first && drawn.reached.has(id));
    const from = Math.floor(this.#chance.between(0, others.length));
    const neighbours = others.slice(from, from + NEIGHBOURS);
    const noticed = [first, ...neighbours].find(
      (id) => drawn.reached.has(id) && this.#notices(drawn.build, id),
    );
    if (noticed === undefined) return;
    this.#keep(drawn, noticed);
    const [kept] = this.#kept;
    left.delete(noticed);
    for (const id of left)
      if (kept?.reached.has(id) === true && this.#notices(kept.build, id)) left.delete(id);
  }
}
