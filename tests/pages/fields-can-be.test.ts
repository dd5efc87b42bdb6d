import { describe, expect, it, test } from 'vitest';
import { facesOfBuilds } from '../tools/generated-faces.ts';

/*
 * Every field for a length, a load or an angle says what it can be, so that a number is understood or asked about by
 * the field it is typed into.
 */

const BUILDS = 40;
/** The fields of a computation take whatever a machine part can be. */
const COMPUTES = /\/workings\//;

interface Found {
  readonly face: string;
  readonly name: string;
  readonly ranged: boolean;
}

function quantityFields(face: string, html: string): Found[] {
  return [...html.matchAll(/<form[^>]*\baction="([^"]*)"[^>]*>(.*?)<\/form>/gs)]
    .filter(([, action = '']) => !COMPUTES.test(action))
    .flatMap(([, , inside = '']) => [...inside.matchAll(/<input\b[^>]*\bdata-reads="[^"]*"[^>]*>/g)])
    .map(([input]) => ({
      face,
      name: /\bname="([^"]*)"/.exec(input)?.[1] ?? '',
      ranged: /\bdata-can-be="[^" ]+ [^" ]+( 0)?( ~[^" ]+ [^" ]+)?"/.test(input),
    }));
}

const found = facesOfBuilds(BUILDS).flatMap(({ name, html }) => quantityFields(name, html));

describe('each field for a quantity says what it can be', () => {
  for (const face of new Set(found.map((each) => each.face)))
    it(face, () => {
      const without = found.filter((each) => each.face === face && !each.ranged).map(({ name }) => name);
      expect([...new Set(without)]).toEqual([]);
    });
});

test('fields of every step that takes quantities were looked at', () => {
  const steps = new Set(found.map(({ face }) => face.replace(/^.*\//, '')));
  for (const step of ['build', 'cam', 'ratio', 'sheet', 'identify', 'geometry', 'adjuster', 'consequences'])
    expect([...steps], step).toContain(step);
});
