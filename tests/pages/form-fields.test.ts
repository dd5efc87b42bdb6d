import { describe, expect, it, test } from 'vitest';
import { z } from 'zod';
import { STEPS } from '../../server/steps/index.ts';
import { facesOfBuilds } from '../tools/generated-faces.ts';

/*
 * A field that its schema does not name is read by nobody: what was typed there would be lost without a word. And a
 * key that two steps have opens one of them only.
 */

/** Enough builds for each form to stand on some page. */
const BUILDS = 40;
/** Which form of the page it is, and the key against sending twice. */
const OF_THE_FORM = ['form', 'key'];

interface FoundForm {
  readonly face: string;
  readonly path: string;
  readonly names: readonly string[];
}

function formsOn(face: string, html: string): FoundForm[] {
  return [...html.matchAll(/<form[^>]*\baction="([^"?]*)[^"]*"[^>]*>(.*?)<\/form>/gs)].map(
    ([, action = '', inside = '']) => ({
      face,
      path: action.replace(/^\/calls\/[^/]+|^\/bench/, ''),
      names: [...inside.matchAll(/<(?:input|select|textarea)[^>]*\bname="([^"]*)"/g)].map(
        ([, name = '']) => name,
      ),
    }),
  );
}

function inner(schema: z.core.$ZodType): z.core.$ZodType {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return inner(schema.def.innerType);
  return schema;
}

/** Whether the schema has a field of this name, dots and indices among it. */
function names(schema: z.core.$ZodType, path: readonly string[]): boolean {
  const [head, ...rest] = path;
  if (head === undefined) return true;
  const at = inner(schema);
  if (at instanceof z.ZodArray) return /^\d+$/.test(head) && names(at.element, rest);
  if (!(at instanceof z.ZodObject)) return false;
  const member: z.core.$ZodType | undefined = at.shape[head];
  return member !== undefined && names(member, rest);
}

const found = facesOfBuilds(BUILDS).flatMap(({ name, html }) => formsOn(name, html));

const unread = (
  forms: readonly FoundForm[],
  { path, schema, beside }: { path: string; schema: z.ZodObject; beside: readonly string[] },
) => [
  ...new Set(
    forms
      .filter((form) => form.path === path)
      .flatMap(({ face, names: fields }) => fields.map((field) => ({ face, field })))
      .filter(({ field }) => ![...OF_THE_FORM, ...beside].includes(field) && !names(schema, field.split('.')))
      .map(({ face, field }) => `${face}: ${field}`),
  ),
];

describe('each field of a form is named by the schema that reads it', () => {
  for (const step of STEPS)
    for (const { path, schema, beside } of step.forms)
      if (schema !== undefined)
        it(`${step.name} ${path}`, () => {
          expect(
            found.some((form) => form.path === path),
            'the form stands on a page',
          ).toBe(true);
          expect(unread(found, { path, schema, beside })).toEqual([]);
        });

  it('finds a misspelt one', () => {
    const form = { face: 'desk/parts', path: '/arms', names: ['name', 'ratioStmap', 'key'] };
    const schema = z.object({ name: z.string(), ratioStamp: z.string() });
    expect(unread([form], { path: '/arms', schema, beside: [] })).toEqual(['desk/parts: ratioStmap']);
  });
});

test('no two steps have the same key or name', () => {
  for (const values of [STEPS.map(({ key }) => key), STEPS.map(({ words }) => words.link)])
    expect(new Set(values).size).toBe(values.length);
});

test('forms of two steps have paths of their own', () => {
  const paths = STEPS.flatMap(({ forms }) => forms.map(({ path }) => path));
  expect(new Set(paths).size).toBe(paths.length);
});
