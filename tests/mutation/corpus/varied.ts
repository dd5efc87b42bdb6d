import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { Chance } from '../../mechanics/explain-readings/random.ts';
import { isList, isMembers, type Path, type Plain, pathsIn, valueAt, withAt } from './plain-data.ts';
import { isName, type Vocabulary } from './vocabulary.ts';

/** The same build with one thing otherwise; undefined where it has nothing of the kind. */
type Vary = (build: Plain, chance: Chance, words: Vocabulary) => Plain | undefined;

const THOU = 0.0000254;
const ROUND = 1e7;

export function asPlain(evidence: Evidence): Plain {
  const plain: Plain = JSON.parse(JSON.stringify(evidence));
  return plain;
}
export function asEvidence(build: Plain): Evidence {
  const evidence: Evidence = JSON.parse(JSON.stringify(build));
  return evidence;
}

const leaves = (build: Plain): Path[] =>
  pathsIn(build).filter((path) => {
    const value = valueAt(build, path);
    return !isList(value) && !isMembers(value) && path[0] !== 'limits' && !isName(path);
  });

const isFilled = (build: Plain, [name = '']: Path): boolean =>
  leaves(valueAt(build, [name]) ?? null).length > 0;

/** Mostly of what the build has something of: the rest is there because every build has it. */
function mostlyFilled(build: Plain, chance: Chance, paths: readonly Path[]): Path | undefined {
  const filled = chance.happens(0.75) ? paths.filter((path) => isFilled(build, path)) : [];
  return anyOf(chance, filled.length > 0 ? filled : paths);
}

const anyOf = <T>(chance: Chance, items: readonly T[]): T | undefined =>
  items.length === 0 ? undefined : chance.pick(items);

/** Lists of entries, each with what stands in it. */
const LISTS = [
  ...['arms', 'seats', 'sat', 'setUps', 'statements', 'passes', 'sheet', 'scans', 'lash', 'tipMarks', 'part'],
  ...['handParts', 'families', 'answers', 'workings', 'notes', 'catalogueRatios'],
] as const;

function linesIn(build: Plain): number {
  const lines = pathsIn(build)
    .filter((path) => path.at(-1) === 'line')
    .map((path) => valueAt(build, path))
    .filter((line) => typeof line === 'number');
  return Math.max(0, ...lines);
}

const idsOf = (build: Plain, list: string): string[] => {
  const items = valueAt(build, [list]);
  return (isList(items) ? items : []).flatMap((item) => {
    const id = valueAt(item, ['id']);
    return typeof id === 'string' ? [id] : [];
  });
};

/** An entry put at the end of the record, about a set-up and an arm that the build has. */
function entered(build: Plain, list: string, entry: Plain, chance: Chance): Plain | undefined {
  const items = valueAt(build, [list]) ?? [];
  if (!isList(items)) return undefined;
  let put = entry;
  const line = linesIn(build) + 1;
  if (valueAt(put, ['id']) !== undefined) put = withAt(put, ['id'], `${list}-more-${line}`);
  if (valueAt(put, ['line']) !== undefined) put = withAt(put, ['line'], line);
  if (list === 'setUps') put = withAt(put, ['number'], items.length + 1);
  for (const [name, from] of [
    ['setUpId', 'setUps'],
    ['armId', 'arms'],
  ] as const) {
    const [named, ids] = [valueAt(put, [name]), idsOf(build, from)];
    if (named !== undefined && !ids.some((id) => id === named)) put = withAt(put, [name], anyOf(chance, ids));
  }
  return withAt(build, [list], [...items, put]);
}

const listWithItems = (build: Plain, chance: Chance) =>
  anyOf(
    chance,
    LISTS.flatMap((name) => {
      const items = valueAt(build, [name]);
      return isList(items) && items.length > 0 ? [{ name, items }] : [];
    }),
  );

const leftOut: Vary = (build, chance) => {
  const list = listWithItems(build, chance);
  if (list === undefined) return undefined;
  return withAt(build, [list.name, Math.floor(chance.between(0, list.items.length))], undefined);
};

const struck: Vary = (build, chance) => {
  const path = anyOf(
    chance,
    leaves(build).filter((each) => each.at(-1) === 'standing'),
  );
  return path === undefined ? undefined : withAt(build, path, valueAt(build, path) !== true);
};

const notSaid: Vary = (build, chance, words) => {
  const paths = pathsIn(build).filter((path) => path[0] !== 'limits' && words.isOptional(path));
  const path = mostlyFilled(build, chance, paths);
  return path === undefined ? undefined : withAt(build, path, undefined);
};

const saidOtherwise: Vary = (build, chance, words) => {
  const path = mostlyFilled(build, chance, leaves(build));
  const value = path === undefined ? undefined : anyOf(chance, words.seen(path));
  return path === undefined || value === undefined ? undefined : withAt(build, path, value);
};

const otherFigure: Vary = (build, chance) => {
  const numbers = leaves(build).filter((path) => typeof valueAt(build, path) === 'number');
  const path = mostlyFilled(build, chance, numbers);
  const was = path === undefined ? undefined : valueAt(build, path);
  if (path === undefined || typeof was !== 'number') return undefined;
  const near = numbers
    .filter((each) => each.at(-1) === path.at(-1))
    .map((each) => valueAt(build, each))
    .filter((each) => typeof each === 'number');
  const changes: readonly (() => number)[] = [
    () => was + chance.sign() * chance.pick([0.5, 1, 2, 5, 10, 20, 50, 100]) * THOU,
    () => was * (1 + chance.normal(0.02)),
    () => was * chance.pick([0.5, 0.9, 1.1, 2, 0.96, 1.04]),
    () => chance.pick(near),
    () => chance.pick(near) + chance.sign() * chance.pick([1, 2, 3, 4, 5]) * THOU,
    () => (Number.isInteger(was) ? was + chance.sign() : was),
  ];
  return withAt(build, path, Math.round(chance.pick(changes)() * ROUND) / ROUND);
};

const saidToo: Vary = (build, chance, words) => {
  const objects: Path[] = [[], ...pathsIn(build)].filter(
    (path) => path[0] !== 'limits' && isMembers(valueAt(build, path)),
  );
  const at = mostlyFilled(build, chance, objects);
  if (at === undefined) return undefined;
  const names = words.mayHave(at).filter((name) => valueAt(build, [...at, name]) === undefined);
  const name = anyOf(chance, names);
  if (name === undefined) return undefined;
  const path = [...at, name];
  const arm = name === 'armId' ? anyOf(chance, idsOf(build, 'arms')) : undefined;
  const value = arm ?? anyOf(chance, words.seen(path));
  return value === undefined ? undefined : withAt(build, path, value);
};

const oneMore: Vary = (build, chance, words) => {
  const name = chance.pick(LISTS);
  const entry = anyOf(chance, words.seen([name, 0]));
  return entry === undefined ? undefined : entered(build, name, entry, chance);
};

/** An entry once more, for another valve or with another figure as the next change may have it. */
const onceMore: Vary = (build, chance, words) => {
  const list = listWithItems(build, chance);
  if (list === undefined) return undefined;
  const again = entered(build, list.name, chance.pick(list.items), chance);
  if (again === undefined) return undefined;
  const added = leaves(again).filter((path) => path[0] === list.name && path[1] === list.items.length);
  const path = anyOf(chance, added);
  const value = path === undefined ? undefined : anyOf(chance, words.seen(path));
  return path === undefined || value === undefined ? again : withAt(again, path, value);
};

/** Another arm where one is named. */
const otherArm: Vary = (build, chance) => {
  const path = anyOf(
    chance,
    pathsIn(build).filter((each) => each.at(-1) === 'armId'),
  );
  const arm = anyOf(chance, idsOf(build, 'arms'));
  return path === undefined || arm === undefined ? undefined : withAt(build, path, arm);
};

/** A question that is asked now is answered. */
const answered: Vary = (build, chance) => {
  let questions: ReturnType<typeof assess>['questions'];
  try {
    questions = assess(asEvidence(build)).questions;
  } catch {
    return undefined;
  }
  const question = anyOf(chance, questions);
  const choice = question === undefined ? undefined : anyOf(chance, question.answers);
  if (question === undefined || choice === undefined) return undefined;
  const value =
    choice.value ?? (choice.takesValue === true ? Math.round(chance.between(8, 26)) * THOU * 10 : undefined);
  const found = { found: true, 'not-found': false }[choice.code];
  const { about } = question;
  // As a program may send it: by the words of the question alone.
  const byWords = chance.happens(0.15);
  return entered(
    build,
    'answers',
    {
      ...{ id: '', line: 0, code: byWords ? '' : question.code, question: question.ask },
      answer: chance.happens(0.1) ? choice.label : choice.code,
      ...(value === undefined ? {} : { value }),
      ...(found === undefined ? {} : { found }),
      ...(choice.takesLean === true && chance.happens(0.7) ? { lean: 0.2 } : {}),
      ...(choice.takesValve === true
        ? { place: { cylinder: chance.pick([1, 2, 3]), valve: chance.pick(['intake', 'exhaust']) } }
        : {}),
      ...(byWords
        ? {}
        : about.of === 'set-up' && chance.happens(0.5)
          ? { setUpId: about.setUpId }
          : { questionId: question.id }),
    },
    chance,
  );
};

/** Two entries of a list change places on the record. */
const otherOrder: Vary = (build, chance) => {
  const list = listWithItems(build, chance);
  if (list === undefined) return undefined;
  const [one, two] = [0, 1].map(() => Math.floor(chance.between(0, list.items.length)));
  const lines = [one, two].map((at) => valueAt(build, [list.name, at ?? 0, 'line']));
  const [first, second] = lines;
  if (first === undefined || second === undefined) return undefined;
  return withAt(withAt(build, [list.name, one ?? 0, 'line'], second), [list.name, two ?? 0, 'line'], first);
};

const WAYS: readonly Vary[] = [
  ...[saidOtherwise, saidOtherwise, saidOtherwise, otherFigure, otherFigure, saidToo, saidToo, saidToo],
  ...[leftOut, struck, notSaid, oneMore, onceMore, onceMore, otherArm, answered, answered, otherOrder],
];

/** A build with one to four things otherwise. */
export function varied(build: Plain, chance: Chance, words: Vocabulary): Plain {
  const times = chance.pick([1, 1, 2, 2, 3, 4]);
  let now = build;
  for (let time = 0; time < times; time++) now = chance.pick(WAYS)(now, chance, words) ?? now;
  return now;
}
