import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { isPick } from '../../web/forms/picked-reading.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { changedFields, entryOf } from './merge-spec.ts';
import { BUILD_GROUPS, CAM_GROUPS, ROCKER_GROUP } from './spec-fields.ts';
import { specText } from './spec-texts.ts';

/** A form against a specification that has changed since it was read. */
interface AgainstNow {
  /** What its writer changed, as typed; what they left alone, as it is now. */
  readonly fields: Fields;
  /** Fields that both have changed, to something else. */
  readonly collide: readonly string[];
}

/** An entry counts as its writer’s where they changed it from what they were shown; a list is one entry. */
export function againstNow(then: BuildSpec, now: BuildSpec, fields: Fields): AgainstNow {
  const own = new Set(changedFields(then, fields).map(entryOf));
  const paths = Object.keys(fields).filter((name) => name.includes('.') && !isPick(name));
  const theirs = new Set(paths.filter((path) => specText(then, path) !== specText(now, path)).map(entryOf));
  const isOwn = (name: string) => own.has(entryOf(name.replace(/~as$/, '')));
  const merged = Object.entries(fields).flatMap(([name, text]): [string, string][] => {
    if (!name.includes('.') || isOwn(name)) return [[name, text ?? '']];
    return isPick(name) ? [] : [[name, specText(now, name)]];
  });
  return {
    fields: Object.fromEntries(merged),
    collide: paths.filter(
      (path) => isOwn(path) && theirs.has(entryOf(path)) && (fields[path] ?? '') !== specText(now, path),
    ),
  };
}

const FIELDS = [...BUILD_GROUPS, ...CAM_GROUPS, ROCKER_GROUP].flatMap((group) => group.fields);

/** Which entries collide, and how they stand now. */
export function collisionSaid(now: BuildSpec, collide: readonly string[]): string {
  return collide
    .map((path) => {
      const label = FIELDS.find((field) => field.path === path)?.label ?? 'An entry of it';
      const text = specText(now, path);
      return `${label} is ${text === '' ? 'empty' : text} now`;
    })
    .join('; ');
}
