import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { at } from '../tools/numbers.ts';
import { type TestService, testService } from '../tools/service.ts';
import { clearanceBody, gapAt, leastGap, shiftAt } from './compute/derived-clearance.ts';
import { linkageBody, lobeLiftAt, ratioAt, rotationFor, valveLiftAt } from './compute/derived-linkage.ts';
import { LOTS } from './compute/derived-lots.ts';
import { LAW_NAMES, MOTION, separation, separationBody } from './compute/derived-motion.ts';
import { PARTS } from './compute/derived-parts.ts';
import { RATIOS } from './compute/derived-ratios.ts';
import { SETTING } from './compute/derived-setting.ts';
import { SPRINGS } from './compute/derived-springs.ts';
import { TIMING } from './compute/derived-timing.ts';
import { deg, expectDerived, inch, metric, texts, WORDS } from './compute/forms.ts';

/**
 * Every computation over HTTP against results worked out here in inches, pounds and degrees, by the formulas that
 * stand beside them, and for cases that are in no example of the service.
 */
let service: TestService;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '1000000' });
});
afterAll(() => service.close());

async function answer(name: string, payload: unknown, units = ''): Promise<unknown> {
  const response = await service.request({
    method: 'POST',
    url: `/api/v1/compute/${name}${units}`,
    headers: { 'content-type': 'application/json' },
    payload: JSON.stringify(payload),
  });
  expect(response.statusCode, `${name}: ${response.body.slice(0, 400)}`).toBe(200);
  expect(response.body).not.toMatch(/null|NaN|Infinity/);
  return response.json();
}

const ALL = [...PARTS, ...SPRINGS, ...SETTING, ...MOTION, ...RATIOS, ...TIMING, ...LOTS].map(
  (each, index) => [`${index} ${each.name}`, each] as const,
);

describe('results worked out apart from the service', () => {
  test.each(ALL)('%s, inch in and out', async (_, { name, body, result }) => {
    const whole = await answer(name, body);
    expectDerived(at(whole, 'result'), result);
    expect(Object.keys(Object(whole)).sort()).toEqual(['assumptions', 'basis', 'cautions', 'result']);
    expectDerived(at(whole, 'basis'), { equation: WORDS, source: WORDS, validity: WORDS });
  });

  test.each(ALL)('%s, metric in, inch out, and the other way', async (_, { name, body, result }) => {
    expectDerived(at(await answer(name, metric(body), '?units=inch'), 'result'), result);
    expectDerived(at(await answer(name, body, '?units=metric'), 'result'), metric(result));
    expectDerived(at(await answer(name, metric(body), '?units=metric'), 'result'), metric(result));
  });

  test.each(ALL)('%s, its quantities as texts', async (_, { name, body, result }) => {
    expectDerived(at(await answer(name, texts(body)), 'result'), result);
    expectDerived(at(await answer(name, texts(metric(body)), '?units=metric'), 'result'), metric(result));
  });
});

test.each(LAW_NAMES)('separation speed by the %s law', async (law) => {
  const { rpm, lift } = separation(law);
  const found = at(await answer('separation-speed', separationBody(law)), 'result');
  expectDerived(at(found, 'camSpeed'), { value: rpm, unit: 'rpm' });
  expectDerived(at(found, 'crankSpeed'), { value: 2 * rpm, unit: 'rpm' });
  // A flat minimum is found no nearer than the root of the last figure by values alone.
  expect(Math.abs(Number(at(found, 'atLift', 'value')) / lift - 1)).toBeLessThan(1e-6);
});

/** The items of a list in an answer. */
function items(document: unknown, ...path: string[]): unknown[] {
  const found = at(document, ...path);
  if (!Array.isArray(found)) throw new Error(`no list at ${path.join('/')}`);
  return found;
}

test.each([0.55, 0.02, 1e-6])('a linkage drawn apart, %d in of lift', async (netLift) => {
  const found = at(await answer('linkage', linkageBody(netLift)), 'result');
  const full = rotationFor(netLift);
  // Drawn with differences of large lengths, the check itself has no more than 1e-15 in to give.
  const own = (value: number) => Math.max(1e-9, 1e-14 / value);
  expect(Math.abs(Number(at(found, 'rotation', 'value')) / full - 1)).toBeLessThan(own(netLift));
  const lobe = lobeLiftAt(full);
  expect(Math.abs(Number(at(found, 'lobeLift', 'value')) / lobe - 1)).toBeLessThan(own(netLift));
  expect(Math.abs(Number(at(found, 'ratioAtLift')) / (netLift / lobe) - 1)).toBeLessThan(own(netLift));
  const list = items(found, 'instantaneous');
  expect(list.length).toBeGreaterThan(10);
  expectDerived(at(list, 0, 'rotation'), deg(0));
  expectDerived(at(list, list.length - 1, 'valveLift'), inch(netLift));
  for (const each of list) {
    const turn = Number(at(each, 'rotation', 'value'));
    expectDerived(each, { rotation: deg(turn), valveLift: inch(valveLiftAt(turn)), ratio: ratioAt(turn) });
  }
});

test('a lift of a ten-thousand-millionth of an inch has the ratio the geometry starts with', async () => {
  const found = at(await answer('linkage', linkageBody(1e-10)), 'result');
  expect(Math.abs(Number(at(found, 'ratioAtLift')) / ratioAt(0) - 1)).toBeLessThan(1e-9);
});

test.each([
  ['pocket', 0],
  ['flat', 0],
  ['pocket', 0.06],
  ['flat', -0.06],
] as const)('piston to valve, %s, pin offset %d', async (floor, e) => {
  const body = clearanceBody(floor, e);
  const found = at(await answer('piston-to-valve', body), 'result');
  const least = leastGap(floor, e);
  expectDerived(at(found, 'margin'), inch(least.gap));
  // A flat minimum is found no nearer than the root of the last figure by values alone.
  expect(Math.abs(Number(at(found, 'atCrankAngle', 'value')) - least.angle)).toBeLessThan(1e-5);
  expectDerived(at(found, 'limit'), inch(0.08));
  expect(at(found, 'verdict')).toBe('clear');
  const [curve, shifts] = [items(found, 'curve'), items(found, 'radialShift')];
  expect(curve.length).toBeGreaterThan(200);
  for (const each of curve) {
    const angle = Number(at(each, 'crankAngle', 'value'));
    expectDerived(each, { crankAngle: deg(angle), gap: inch(gapAt(floor, e, angle)) });
  }
  for (const each of shifts) {
    const angle = Number(at(each, 'crankAngle', 'value'));
    expectDerived(each, { crankAngle: deg(angle), shift: inch(shiftAt(e, angle)) });
  }
  const metricOut = at(await answer('piston-to-valve', texts(metric(body)), '?units=metric'), 'result');
  expectDerived(at(metricOut, 'margin'), { value: least.gap * 25.4, unit: 'mm' });
});

test.each([
  ['.482 in', 0.482],
  ['482 thou', 0.482],
  ['7/16 in', 0.4375],
  ['12.24 mm', 12.24 / 25.4],
  ['12240 um', 12.24 / 25.4],
  ['0,482 in', 0.482],
  ['1 1/16 in', 1.0625],
  ['.482"', 0.482],
])('a length as the text %j', async (lobeLift, inches) => {
  expectDerived(at(await answer('lift', { lobeLift, ratio: 1 }), 'result', 'grossLift'), inch(inches));
});

test('a tilt as the text 23 deg', async () => {
  const body = { reading: '482 thou', tilt: '23 deg', contact: 'flat-face' };
  const wanted = inch(0.482 * Math.cos((23 * Math.PI) / 180));
  expectDerived(at(await answer('cosine-error', body), 'result', 'trueMotion'), wanted);
});

test('a list keeps its order, in either form, with two thousand items in it', async () => {
  const values = Array.from({ length: 2000 }, (_, index) => ((index * 7919) % 1440) - 720);
  const body = { stroke: inch(4), rodLength: inch(6), from: 'crank-zero' };
  const one = at(await answer('piston-drop', { ...body, crankAngles: values.map(deg) }), 'result', 'drops');
  const other = await answer('piston-drop', { ...body, crankAngles: { values, unit: 'deg' } });
  expect(at(other, 'result', 'drops')).toEqual(one);
  const wanted = values.map((angle) => {
    const t = (angle * Math.PI) / 180;
    return inch(8 - 2 * Math.cos(t) - Math.sqrt(36 - (2 * Math.sin(t)) ** 2));
  });
  expectDerived(one, wanted);
});

describe('a verdict at its borders', () => {
  // .0900 left: retainer .650 from the seal, .560 of lift.
  const verdict = async (limit: number, uncertainty?: number) => {
    const more = uncertainty === undefined ? {} : { uncertainty: inch(uncertainty) };
    const body = { closedDistance: inch(0.65), netLift: inch(0.56), limit: inch(limit), ...more };
    return at(await answer('retainer-to-seal', body), 'result', 'verdict');
  };
  test.each([
    [0.09, undefined, 'clear'],
    [0.09 + 5e-10, undefined, 'clear'],
    [0.09 + 2e-9, undefined, 'short'],
    [0.08, 0.01, 'clear'],
    [0.08 + 2e-9, 0.01, 'close'],
    [0.1, 0.01, 'close'],
    [0.1 + 5e-10, 0.01, 'close'],
    [0.1 + 2e-9, 0.01, 'short'],
    [0, 0.1, 'close'],
  ] as const)('limit %d in, give or take %s in: %s', async (limit, uncertainty, wanted) => {
    expect(await verdict(limit, uncertainty)).toBe(wanted);
  });
});

test('a number read keeps the unit it was read in, whatever units are asked for', async () => {
  const read = await answer('read-number', { text: '482 thou', kind: 'length' }, '?units=metric');
  expectDerived(at(read, 'result', 'quantity'), { value: 482, unit: 'thou' });
  const ratio = await answer('read-number', { text: '1.6:1', kind: 'ratio' });
  expectDerived(at(ratio, 'result'), { ratio: 1.6, readAs: '1.6', ambiguities: [] });
  const asked = at(await answer('read-number', { text: '1,234 in', kind: 'length' }), 'result');
  expect(at(asked, 'quantity')).toBeUndefined();
  expect(at(asked, 'readAs')).toBeUndefined();
  expectDerived(at(asked, 'ambiguities', 0), { readAs: WORDS, quantity: inch(1.234), question: WORDS });
  expectDerived(at(asked, 'ambiguities', 1), { readAs: WORDS, quantity: inch(1234), question: WORDS });
});
