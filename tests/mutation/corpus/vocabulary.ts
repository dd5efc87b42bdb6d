import {
  isList,
  isMembers,
  kindOf,
  type Path,
  type Plain,
  type PlainObject,
  pathsIn,
  valueAt,
} from './plain-data.ts';

/** Values that stand for nothing by themselves: names of entries and their places on the record. */
const NAMES = /(?:^|\.)(?:id|line|number|setUpId|armId|partId|questionId|entryId)$/;
export const isName = (path: Path): boolean => NAMES.test(kindOf(path));

/** What is said anywhere of things of one kind, by the kind of place it stands at. */
export interface Vocabulary {
  /** Every value that was ever seen there, a whole part too. */
  readonly seen: (path: Path) => readonly Plain[];
  /** Members that something of this kind had, and that others did without. */
  readonly mayHave: (path: Path) => readonly string[];
  readonly isOptional: (path: Path) => boolean;
}

const MOST = 400;

export function vocabularyOf(builds: readonly Plain[]): Vocabulary {
  const values = new Map<string, Map<string, Plain>>();
  const objects = new Map<string, number>();
  const having = new Map<string, Map<string, number>>();
  const count = (path: Path, value: PlainObject) => {
    const kind = kindOf(path);
    objects.set(kind, (objects.get(kind) ?? 0) + 1);
    const members = having.get(kind) ?? new Map<string, number>();
    for (const name of Object.keys(value)) members.set(name, (members.get(name) ?? 0) + 1);
    having.set(kind, members);
  };
  for (const build of builds) {
    if (isMembers(build)) count([], build);
    for (const path of pathsIn(build)) {
      const value = valueAt(build, path);
      if (value === undefined || kindOf(path).startsWith('limits')) continue;
      if (isMembers(value)) count(path, value);
      if (isList(value) && value.some(isMembers)) continue;
      const kind = kindOf(path);
      const known = values.get(kind) ?? new Map<string, Plain>();
      if (known.size < MOST) known.set(JSON.stringify(value), value);
      values.set(kind, known);
    }
  }
  const lists = new Map([...values].map(([kind, known]) => [kind, [...known.values()]]));
  const isOptional = (path: Path): boolean => {
    const at = kindOf(path.slice(0, -1));
    const name = path.at(-1);
    return typeof name === 'string' && (having.get(at)?.get(name) ?? 0) < (objects.get(at) ?? 0);
  };
  return {
    seen: (path) => lists.get(kindOf(path)) ?? [],
    mayHave: (path) =>
      [...(having.get(kindOf(path)) ?? [])].flatMap(([name, times]) =>
        times < (objects.get(kindOf(path)) ?? 0) ? [name] : [],
      ),
    isOptional,
  };
}
