import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Component } from '../../../views/parts/components.ts';
import { choiceField, type FormState } from '../../web/forms/fields.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';
import type { OtherSide } from './spec-form.ts';
import { specText } from './spec-texts.ts';

/*
 * Two people gave one entry two values. Neither is replaced until somebody has said which one stands: the form carries
 * the entries that wait for that, and each has a choice of its own.
 */

const SUFFIX = '~stands';
const standsName = (path: string): string => `${path}${SUFFIX}`;

const shownOr = (text: string): string => (text === '' ? 'nothing' : text);

/** The entries that wait for somebody to say which value stands, as the form carries them. */
export const askedOf = ({ asked = '' }: Fields): string[] => asked.split(' ').filter((path) => path !== '');

/** The two values of an entry, to pick from. */
export function standsField(
  shown: FormState,
  path: string,
  label: string,
  other: OtherSide | undefined,
): Component[] {
  if (other?.fields.has(path) !== true) return [];
  return [
    choiceField(
      shown,
      standsName(path),
      `${label}: which one stands?`,
      {
        theirs: `${shownOr(specText(other.spec, path))}, as ${other.who} has it`,
        own: `${shownOr(shown.typed[path] ?? '')}, as typed here`,
      },
      { inline: true },
    ),
  ];
}

/** What was posted with the picks done, and the entries that nobody has picked for. */
export function afterPicks(
  now: BuildSpec,
  posted: Fields,
): { readonly fields: Fields; readonly open: readonly string[] } {
  const asked = askedOf(posted);
  const pickOf = (path: string) => posted[standsName(path)] ?? '';
  const theirs = new Set(asked.filter((path) => pickOf(path) === 'theirs'));
  const fields = Object.fromEntries(
    Object.entries(posted)
      .filter(([name]) => name !== 'asked' && !name.endsWith(SUFFIX))
      .map(([name, text]) => [name, theirs.has(name) ? specText(now, name) : text]),
  );
  const differs = (path: string) => (fields[path] ?? '') !== specText(now, path);
  return { fields, open: asked.filter((path) => pickOf(path) === '' && differs(path)) };
}

/** What is said of entries that wait. */
export const standsFaults = (
  now: BuildSpec,
  typed: Fields,
  who: string,
  paths: readonly string[],
): FormFault[] =>
  paths.map((field) => ({
    field,
    detail: `is ${shownOr(specText(now, field))} now: ${who} has just put that in, and ${shownOr(typed[field] ?? '')} was typed here. Say which one stands`,
  }));
