import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { type BuildSpec, buildSpec } from '../../../shared/schemas/build-spec.ts';
import { isPick } from '../../web/forms/picked-reading.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';
import { readForm } from '../../web/forms/read-form.ts';
import { specText, valueAtPath } from './spec-texts.ts';

type Tree = Record<string, unknown>;

function branch(tree: Tree, key: string): Tree {
  const here = tree[key];
  const copy: Tree = typeof here === 'object' && here !== null && !Array.isArray(here) ? { ...here } : {};
  tree[key] = copy;
  return copy;
}

/** Puts a value at a dotted path; undefined takes it out, and the branches that it leaves empty. */
function put(tree: Tree, path: string, value: unknown): void {
  const [first = '', ...rest] = path.split('.');
  if (rest.length === 0) {
    if (value === undefined) delete tree[first];
    else tree[first] = value;
    return;
  }
  const below = branch(tree, first);
  put(below, rest.join('.'), value);
  if (Object.keys(below).length === 0) delete tree[first];
}

/** A list is one entry: its rows come and go together. */
export const entryOf = (field: string) => field.replace(/\.(durations|alsoPlanned)\..*$/, '.$1');

/** Fields of a form that a person changed from what they were shown. */
export function changedFields(shown: BuildSpec, fields: Fields): string[] {
  return Object.keys(fields).filter(
    (field) => !isPick(field) && field.includes('.') && (fields[field] ?? '') !== specText(shown, field),
  );
}

type Merged =
  | { readonly ok: true; readonly spec: BuildSpec }
  | { readonly ok: false; readonly faults: readonly FormFault[] };

/**
 * The specification with a form's fields in place, read in the units that are spoken; what the form does not have
 * stays as it is.
 */
export function mergeSpec(current: BuildSpec, fields: Fields): Merged {
  const entries = Object.fromEntries(
    Object.entries(fields).filter(([field, text]) => field.includes('.') && text.trim() !== ''),
  );
  const read = readForm(buildSpec, entries, { lengths: spokenUnits() === 'metric' ? 'mm' : 'in' });
  if (!read.ok) return read;
  const changed = new Set(changedFields(current, fields).map(entryOf));
  const tree: Tree = { ...current };
  for (const path of changed) put(tree, path, valueAtPath(read.data, path));
  return { ok: true, spec: buildSpec.parse(tree) };
}
