import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { valueAt } from '../../shared/problems/pointer.ts';
import { problemIn } from '../tools/problem.ts';
import { type TestService, testService } from '../tools/service.ts';
import { SOUND } from './compute/bodies.ts';
import { principalOf } from './compute/caller.ts';
import { inch } from './compute/forms.ts';
import { isQuantity, type Leaf, leavesOf, objectsOf, withAt } from './compute/leaves.ts';

/** The contract of the computations as a caller meets it who has never seen their code and means no good. */
let service: TestService;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '10000000' });
});
afterAll(() => service.close());

const { send, faults, codes } = principalOf(() => service);
const NAMES = [...(await loadComputations()).keys()];
/** These read their words themselves, so that what is no word of a list has other codes. */
const OWN_WORDS = new Set(['/text', '/assume', '/designation', '/thread']);

const LEAVES = NAMES.flatMap((name) => leavesOf(SOUND[name]).map((leaf) => ({ name, ...leaf })));
const titled = <Each extends { name: string } & Leaf>(list: readonly Each[]) =>
  list.map((each) => [`${each.name} ${each.pointer}`, each] as const);
const body = (name: string, pointer: string, value: unknown) => withAt(SOUND[name], pointer, value);

test('every computation has a sound body here, and it is answered', async () => {
  expect(Object.keys(SOUND).sort()).toEqual(NAMES.toSorted());
  for (const name of NAMES) {
    const response = await send(name, JSON.stringify(SOUND[name]));
    expect(response.statusCode, response.body).toBe(200);
  }
});

describe('a quantity', () => {
  const quantities = LEAVES.flatMap((leaf) => (isQuantity(leaf) ? [leaf] : []));
  test.each(titled(quantities))('%s', async (_, { name, pointer, value }) => {
    const told = (part: unknown) => codes(name, body(name, pointer, part));
    const other = value.unit === 'lbf' ? 'in' : 'lbf';
    expect(await told(1)).toEqual([`${pointer} wrong-dimension`]);
    expect(await told({ ...value, unit: other })).toEqual([`${pointer} wrong-dimension`]);
    expect(await told(`1 ${other === 'lbf' ? 'N' : 'mm'}`)).toEqual([`${pointer} wrong-dimension`]);
    expect(await told('1')).toEqual([`${pointer} wrong-dimension`]);
    expect(await told({ ...value, unit: 'cubit' })).toEqual([`${pointer} unknown-unit`]);
    expect(await told({ ...value, value: 'NaN' })).toEqual([`${pointer} not-a-number`]);
    for (const text of ['NaN', 'Infinity', '-Infinity', `NaN ${value.unit}`, 'null']) {
      expect(await told(text)).toEqual([`${pointer} not-a-number`]);
    }
    for (const none of [null, true, [], [1]]) expect(await told(none)).toEqual([`${pointer} not-a-number`]);
    expect(await told({ ...value, value: null })).toEqual([`${pointer} not-a-number`]);
    expect(await told({ ...value, value: 1e308 })).toEqual([`${pointer} impossible-input`]);
    expect(await told({ ...value, value: -1e308 })).toEqual([`${pointer} impossible-input`]);
    expect(await told({ ...value, colour: 'red' })).toEqual([`${pointer}/colour unknown-field`]);
    expect(await told({ ...value, value: undefined })).toEqual([`${pointer}/value required`]);
    expect(await told({ ...value, unit: undefined })).toEqual([`${pointer}/unit required`]);
    const beyond = JSON.stringify(body(name, pointer, { ...value, value: 'HERE' })).replace(
      '"HERE"',
      '1e999',
    );
    const [first, ...more] = await faults(name, beyond);
    expect([first?.pointer, more]).toEqual([pointer, []]);
  });

  // What can lie on either side of zero: angles by sign, an offset, an entry that may itself be the mistake.
  const SIGNED =
    /crankAngle|pinOffset|advance$|before|after|opens|closes|armAngle|tipAngle|pushrodAngle|BoreAngle|pivotHeight|tipHeight|readings\/0\/value|perTurn$/;
  const unsigned = quantities.filter(
    ({ name, pointer }) => !(SIGNED.test(pointer) && name !== 'dial-reading'),
  );
  test.each(titled(unsigned))('%s is not negative', async (_, { name, pointer, value }) => {
    const told = await faults(
      name,
      JSON.stringify(body(name, pointer, { ...value, value: -0.25 * Math.abs(value.value) })),
    );
    const code = pointer === '/netLift' ? 'impossible-input' : 'out-of-range';
    expect(told.map((fault) => `${fault.pointer} ${fault.code}`)).toEqual([`${pointer} ${code}`]);
  });

  test.each(titled(quantities))('%s, tiny: an answer or a fault, not at the root', async (_, leaf) => {
    for (const value of [1e-308, 5e-324, 1e-160, 1e-20, 0]) {
      const response = await send(
        leaf.name,
        JSON.stringify(body(leaf.name, leaf.pointer, { ...leaf.value, value })),
      );
      if (response.statusCode === 200) continue;
      const { errors = [] } = problemIn(response, 422, 'invalid-input');
      expect(errors.length).toBeGreaterThan(0);
      for (const fault of errors) expect(fault.pointer).toMatch(/^\/[a-z]/);
    }
  });
});

describe('a bare number', () => {
  test.each(titled(LEAVES.filter(({ value }) => typeof value === 'number')))(
    '%s',
    async (_, { name, pointer }) => {
      const told = (part: unknown) => codes(name, body(name, pointer, part));
      expect(await told(inch(1.6))).toEqual([`${pointer} wrong-dimension`]);
      for (const none of ['1.6', 'NaN', 'Infinity', '1.6 in', null, true, {}, [1.6]]) {
        expect(await told(none)).toEqual([`${pointer} not-a-number`]);
      }
      const [huge] = await told(1e308);
      expect(huge).toMatch(new RegExp(`^${pointer} (impossible-input|out-of-range)$`));
      const text = JSON.stringify(body(name, pointer, 'HERE')).replace('"HERE"', '-1e999');
      expect((await faults(name, text)).map((fault) => fault.pointer)).toEqual([pointer]);
    },
  );
});

describe('a word of a list, or yes or no', () => {
  const words = LEAVES.filter(
    ({ pointer, value }) => !isQuantity({ pointer, value }) && typeof value !== 'number',
  );
  test.each(titled(words.filter(({ pointer }) => !OWN_WORDS.has(pointer))))(
    '%s',
    async (_, { name, pointer }) => {
      for (const none of ['zzz', '', null, 5, {}, [], 'constructor', '__proto__']) {
        const told = await codes(name, body(name, pointer, none));
        expect(told, JSON.stringify(none)).toHaveLength(1);
        expect(told[0]).toMatch(new RegExp(`^${pointer}(/expansion)? (not-allowed|required)$`));
      }
    },
  );
});

describe('fields that are missing, strange or faulty together', () => {
  test.each(NAMES)('%s: a missing field is asked for where it belongs, or may be left out', async (name) => {
    for (const { pointer } of leavesOf(SOUND[name])) {
      if (/\/\d+$/.test(pointer)) continue;
      const response = await send(name, JSON.stringify(body(name, pointer, undefined)));
      if (response.statusCode === 200) continue;
      const { errors = [] } = problemIn(response, 422, 'invalid-input');
      expect(errors.map((fault) => `${fault.pointer} ${fault.code}`)).toEqual([`${pointer} required`]);
      expect(errors[0]).not.toHaveProperty('received');
    }
  });

  test.each(NAMES)('%s: fields it does not know are told, at every depth', async (name) => {
    for (const pointer of objectsOf(SOUND[name])) {
      for (const key of ['colour', 'constructor', 'toString', '__proto__']) {
        const text = JSON.stringify(body(name, `${pointer}/STRANGE`, 1)).replace('"STRANGE"', `"${key}"`);
        const told = await faults(name, text);
        expect(told.map((fault) => `${fault.pointer} ${fault.code}`)).toEqual([
          `${pointer}/${key} unknown-field`,
        ]);
        expect(told[0]?.received).toBe(1);
      }
    }
  });

  test.each(NAMES)('%s: every fault at once, each with what came, and no neighbour blamed', async (name) => {
    const leaves = leavesOf(SOUND[name]).filter(({ pointer }) => pointer !== '/kind');
    const bad = leaves.reduce(
      (whole: unknown, { pointer }, index) => withAt(whole, pointer, [index]),
      SOUND[name],
    );
    const told = await faults(name, JSON.stringify(bad));
    expect(told.map(({ pointer }) => pointer).sort()).toEqual(leaves.map(({ pointer }) => pointer).sort());
    for (const fault of told) expect(fault.received).toEqual(valueAt(bad, fault.pointer));
    for (const { pointer } of leaves) {
      const [fault, ...more] = await faults(name, JSON.stringify(body(name, pointer, [7])));
      expect([fault?.pointer, fault?.received, more]).toEqual([pointer, [7], []]);
    }
  });

  test.each(NAMES)('%s: a body that is no object of fields', async (name) => {
    for (const text of ['null', '[]', '"text"', '5', 'true', '[{}]']) {
      const told = await faults(name, text);
      expect(told.map(({ pointer }) => pointer)).toEqual(['']);
    }
    expect(
      (await faults(name, '{}')).every(({ pointer, code }) => /^\/\w+$/.test(pointer) && code === 'required'),
    ).toBe(true);
    for (const text of ['', '{', '{"a":}', 'NaN', '{"a":NaN}', '\u0000'])
      problemIn(await send(name, text), 400, 'invalid-json');
    for (const type of [
      'text/plain',
      'application/xml',
      'application/x-www-form-urlencoded',
      'multipart/form-data',
    ]) {
      problemIn(await send(name, JSON.stringify(SOUND[name]), type), 415, 'media-type-not-taken');
    }
    const deep = `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`;
    expect((await send(name, deep)).statusCode).toBeLessThan(423);
    expect((await send(name, '['.repeat(200_000))).statusCode).toBe(400);
  });
});
