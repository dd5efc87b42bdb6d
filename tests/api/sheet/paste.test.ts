import { describe, expect, test } from 'vitest';
import { openCall } from '../../tools/call.ts';
import { at } from '../../tools/numbers.ts';
import { HOW, sheetService } from './tools.ts';

const { open, post, sheetOf } = sheetService();

describe('pasted from a spreadsheet', () => {
  const TEXT = [
    'Cyl\tValve\tLobe lift (in)\tValve lift, mm\tLash',
    '1\tIntake\t.350\t14.22\t.016',
    '2\tE\t.362\t14.70\tmore than .014, less than .016',
    '3\tI\t\t14.2\t-',
  ].join('\n');

  test('a dry look reads it and keeps nothing; then it is kept as looked at', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const url = `/api/v1/builds/${buildId}/sheet/paste`;
    const look = await post(url, { ...HOW, text: TEXT });
    expect(look.status).toBe(200);
    expect(at(look.json, 'faults')).toEqual([]);
    expect(at(look.json, 'readings', 1)).toMatchObject({
      line: 2,
      cylinder: 1,
      kind: 'valve-lift',
      readAs: '14.22 mm',
    });
    expect(at(look.json, 'readings', 5)).toMatchObject({
      line: 3,
      readAs: 'more than .014 in, less than .016 in',
    });
    expect(at((await sheetOf(buildId)).json, 'readings')).toEqual([]);
    const kept = await post(url, { ...HOW, text: TEXT, keep: true });
    expect(at(kept.json, 'kept', 6, 'readAs')).toBe('14.2 mm');
    expect(at((await sheetOf(buildId)).json, 'readings', 6, 'cylinder')).toBe(3);
    const again = await post(url, { ...HOW, text: TEXT });
    expect(at(again.json, 'readings', 0, 'already')).toBe('.350 in');
  });

  test('a quotation mark left open is told by its line', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const text = `cylinder,valve,lobe lift\n1,intake,".350\n${'2,intake,.350\n'.repeat(3000)}`;
    const detail = expect.stringContaining(
      'has a quote mark that does not open or close a cell as it should',
    );
    const look = await post(`/api/v1/builds/${buildId}/sheet/paste`, { ...HOW, text });
    expect([look.status, at(look.json, 'faults')]).toMatchObject([200, [{ line: 2, detail }]]);
    const kept = await post(`/api/v1/builds/${buildId}/sheet/paste`, { ...HOW, text, keep: true });
    expect([kept.status, at(kept.json, 'errors')]).toMatchObject([422, [{ pointer: '/text', detail }]]);
  });

  test('blank lines, of whichever kind, before, between and after the rows say nothing', async () => {
    const { buildId } = await openCall(open().service, open().person);
    for (const blank of ['\n', '\r\n', '\r', ' \n', ',,\n']) {
      const lines = blank.repeat(10_000 / blank.length);
      const text = `${lines}cylinder,valve,lobe lift${blank}${lines}1,intake,.350\r\n${lines}`;
      const look = await post(`/api/v1/builds/${buildId}/sheet/paste`, { ...HOW, text });
      expect([look.status, at(look.json, 'faults')]).toEqual([200, []]);
      expect(at(look.json, 'readings', 0, 'readAs')).toBe('.350 in');
    }
  });

  test('every fault with its line and column, and none of it kept', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const text =
      'cylinder,valve,lobe lift\n1,intake,.350\n1,intake,.351\n99,intake,.350\n4,sideways,.350\n5,intake,abc';
    const url = `/api/v1/builds/${buildId}/sheet/paste`;
    const look = await post(url, { ...HOW, text });
    const faults = at(look.json, 'faults');
    expect(
      Array.isArray(faults) ? faults.map((fault) => [at(fault, 'line'), at(fault, 'column')]) : [],
    ).toEqual([
      [3, 'lobe lift'],
      [4, 'cylinder'],
      [5, 'valve'],
      [6, 'lobe lift'],
    ]);
    const kept = await post(url, { ...HOW, text, keep: true });
    expect(kept.status).toBe(422);
    expect(at(kept.json, 'errors', 0, 'pointer')).toBe('/text');
    expect(at((await sheetOf(buildId)).json, 'readings')).toEqual([]);
  });

  test('a bare lift is asked about: lobe or valve', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const look = await post(`/api/v1/builds/${buildId}/sheet/paste`, {
      ...HOW,
      text: 'cyl,valve,lift\n1,I,.35',
    });
    expect(String(at(look.json, 'faults', 0, 'detail'))).toMatch(/lobe or of the valve/);
  });

  test('one row for each cylinder, a column for each side, and quotes as inches', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const text = 'Cylinder;Intake lobe;Exhaust lobe\n1;.350";.362\n2;0.351;.361';
    const look = await post(`/api/v1/builds/${buildId}/sheet/paste`, { ...HOW, text });
    expect(at(look.json, 'faults')).toEqual([]);
    expect(at(look.json, 'readings', 1)).toMatchObject({ cylinder: 1, valve: 'exhaust', readAs: '.362 in' });
    expect(at(look.json, 'readings', 0)).toMatchObject({ valve: 'intake', readAs: '.350 in' });
  });
});
