import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';

type Tree = Readonly<Record<string, unknown>>;
const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !('typed' in value);

/** Dotted paths of every entry of a specification. */
function entries(tree: Tree, prefix = ''): Map<string, unknown> {
  const found = new Map<string, unknown>();
  for (const [key, value] of Object.entries(tree)) {
    if (value === undefined) continue;
    if (isTree(value)) for (const [path, inner] of entries(value, `${prefix}${key}.`)) found.set(path, inner);
    else found.set(`${prefix}${key}`, value);
  }
  return found;
}

function fill(then: Tree, now: Tree): Record<string, unknown> {
  const filled: Record<string, unknown> = { ...then };
  for (const [key, value] of Object.entries(now)) {
    const here = then[key];
    if (here === undefined) filled[key] = value;
    else if (isTree(here) && isTree(value)) filled[key] = fill(here, value);
  }
  return filled;
}

/** An entry as it counts: a quantity by its number and unit, however it was typed. */
const counted = (value: unknown): string =>
  JSON.stringify(value, (key, inner: unknown) => (key === 'typed' || key === 'readAs' ? undefined : inner));

/** `clearances.intake.closedGapAtTdc` as `clearances intake, closed gap at tdc`. */
export function sayPath(path: string): string {
  const parts = path.split('.');
  const last = (parts.pop() ?? '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return [parts.join(' '), last].filter((part) => part !== '').join(', ');
}

export interface SpecInForce {
  readonly spec: unknown;
  /** Entries that were not yet there at the set-up and have been made since. */
  readonly filled: readonly string[];
  /** Entries that stand otherwise now; the ones of the set-up's revision count. */
  readonly changed: readonly string[];
}

/**
 * What was known at the set-up's revision, with blanks filled from what has been entered since: an entry that was
 * not there then can't contradict the readings. One that has changed since does not count.
 */
export function specInForce(then: BuildSpec, now: BuildSpec): SpecInForce {
  const [old, later] = [entries(then), entries(now)];
  const paths = [...later.keys()];
  return {
    spec: fill(then, now),
    filled: paths.filter((path) => !old.has(path)),
    changed: [...old.keys()].filter(
      (path) => later.has(path) && counted(old.get(path)) !== counted(later.get(path)),
    ),
  };
}
