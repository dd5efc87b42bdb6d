import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { loadComputations, type Registered } from '../../server/compute/registry.ts';
import { memberOf } from '../../shared/member.ts';
import { FAULT_CODES } from '../../shared/problems/faults.ts';

/** The registrations are held to the docstring standard of DEVELOPERS.md, and each example is run. */
const computations = [...(await loadComputations()).values()];

/** SI units that a docstring may name. */
const UNITS = [
  'm',
  'N',
  'N/m',
  'rad',
  'rad/s',
  'Hz',
  'kg',
  'Pa',
  'kg/m³',
  'K',
  'm/N',
  '1/K',
  '1',
  'any',
  'text',
  'as the readings',
];

function docstringOf(name: string): string {
  const source = readFileSync(
    new URL(`../../server/mechanics/computations/${name}.ts`, import.meta.url),
    'utf8',
  );
  const blocks = source.match(/\/\*\*[\s\S]*?\*\//g) ?? [];
  return blocks.find((block) => block.includes('@param') || block.includes('@returns')) ?? '';
}

function fieldsOf(computation: Registered): string[] {
  const schema = computation.inputSchema;
  if (typeof schema !== 'object' || schema === null || Array.isArray(schema)) return [];
  const alternatives = [
    schema,
    ...[schema.anyOf, schema.oneOf, schema.allOf].flatMap((each) => (Array.isArray(each) ? each : [])),
  ];
  const names = new Set<string>();
  for (const each of alternatives) {
    if (typeof each !== 'object' || each === null || Array.isArray(each)) continue;
    const { properties } = each;
    if (typeof properties === 'object' && properties !== null && !Array.isArray(properties)) {
      for (const key of Object.keys(properties)) names.add(key);
    }
  }
  return [...names].sort();
}

function near(actual: unknown, expected: unknown, path: string): void {
  if (typeof expected === 'number' && typeof actual === 'number') {
    expect(Math.abs(actual - expected), path).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
    return;
  }
  if (typeof expected === 'object' && expected !== null && typeof actual === 'object' && actual !== null) {
    expect(Object.keys(actual).sort(), path).toEqual(Object.keys(expected).sort());
    for (const [key, value] of Object.entries(expected)) near(memberOf(actual, key), value, `${path}/${key}`);
    return;
  }
  expect(actual, path).toEqual(expected);
}

describe.each(computations.map((each) => [each.name, each] as const))('%s', (name, computation) => {
  const text = docstringOf(name)
    .replace(/^\s*\* ?/gm, ' ')
    .replace(/\s+/g, ' ');

  test('the documented parameters are those of the schema, each with a unit', () => {
    const documented = [...text.matchAll(/@param ([A-Za-z0-9]+) \[([^\]]+)\]/g)];
    expect(documented.map((match) => match[1]).sort()).toEqual(fieldsOf(computation));
    for (const match of documented) {
      // Mixed records name each unit; an angle may say whose it is.
      for (const unit of (match[2] ?? '').split(', ')) {
        expect(UNITS, `${match[1]} [${match[2]}]`).toContain(unit.replace(/ of the (cam|crank)$/, ''));
      }
    }
  });

  test('equation, returns with units, validity and source are there, and the codes thrown are known', () => {
    expect(text).toMatch(/Equation:/);
    expect(text).toMatch(/@returns .*\[[^\]]+\]/);
    expect(text).toMatch(/Validity:/);
    expect(text).toMatch(/Source:/);
    for (const match of text.matchAll(/@throws ([a-z-]+)/g)) expect(FAULT_CODES).toContain(match[1]);
  });

  test('the worked example gives the documented result', () => {
    near(computation.run(computation.example.inputs, 'inch').result, computation.example.result, name);
  });
});
