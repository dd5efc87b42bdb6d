import { describe, expect, test } from 'vitest';
import { openCall } from '../../tools/call.ts';
import { at, rowWhere } from '../../tools/numbers.ts';
import { EIGHT, HOW, lift, sheetService } from './tools.ts';

const { open, post, sheetOf, keep, armOn, place } = sheetService();

describe('an odd valve on the sheet', () => {
  test('one odd valve on a lobe like the others: rocker or position, and which swap decides', async () => {
    const { buildId } = await openCall(open().service, open().person);
    await armOn(buildId, 'arm E', 5);
    await armOn(buildId, 'arm D', 4);
    await keep(buildId, EIGHT);
    const { json } = await sheetOf(buildId);
    const side = at(json, 'springs', 0, 'sides', 0);
    expect(at(json, 'springs', 0, 'quantity')).toBe('light-spring ratio');
    expect(at(side, 'odd', 0, 'cylinder')).toBe(5);
    expect(at(side, 'odd', 0, 'cause')).toBe('rocker-or-position');
    expect(at(side, 'odd', 0, 'outlier')).toBe(true);
    expect(String(at(side, 'odd', 0, 'swap'))).toMatch(/^arm E \(5 intake\) and arm D \(4 intake\) swapped/);
  });

  test('a lift that the hand read backwards would give is asked, and told from its siblings only once it was looked at', async () => {
    const { buildId } = await openCall(open().service, open().person);
    // The hand stands at 60 of .560; the other ring of the dial has 40 there, which is .540.
    await keep(
      buildId,
      EIGHT.map((each) => (each.reading === '0.525 in' ? { ...each, reading: '.540 in' } : each)),
    );
    const { json } = await sheetOf(buildId);
    const five = (from: unknown, list: string) => rowWhere(from, list, 'cylinder', 5);
    expect(at(five(json, 'valves'), 'inDoubt')).toBe(true);
    expect(at(json, 'springs', 0, 'sides', 0, 'odd')).toEqual([]);
    const question = rowWhere(json, 'questions', 'code', 'hand-read-backwards');
    const done = await post(`/api/v1/builds/${buildId}/answers`, {
      question: String(at(question, 'ask')),
      questionId: at(question, 'id'),
      code: 'hand-read-backwards',
      answer: 'not found: the hand ran the usual way',
      found: false,
    });
    expect(done.status).toBe(201);
    const after = (await sheetOf(buildId)).json;
    expect(at(five(after, 'valves'), 'inDoubt')).toBe(false);
    expect(at(after, 'springs', 0, 'sides', 0, 'odd', 0, 'cylinder')).toBe(5);
  });

  test('after the swap the difference has gone with the arm: the part', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const [e, d] = [await armOn(buildId, 'arm E', 5), await armOn(buildId, 'arm D', 4)];
    await keep(buildId, EIGHT);
    await place(buildId, e, 4);
    await place(buildId, d, 5);
    await keep(buildId, [lift(4, '.525 in'), lift(5, '.560 in')]);
    const { json } = await sheetOf(buildId);
    expect(at(json, 'springs', 0, 'swaps', 0, 'verdict')).toBe('part');
    // The odd one is now where the arm is; the lift before the swap is not averaged into it.
    expect(at(json, 'springs', 0, 'sides', 0, 'odd', 0, 'cylinder')).toBe(4);
  });

  test('and so where what was read before it is entered last, with its arm, as of the arms before', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const [e, d] = [await armOn(buildId, 'arm E', 4), await armOn(buildId, 'arm D', 5)];
    const NOW: Readonly<Record<number, string>> = { 4: '.525 in', 5: '.560 in' };
    const late = EIGHT.map((each) =>
      each.kind === 'valve-lift' ? { ...each, reading: NOW[each.cylinder] ?? each.reading } : each,
    );
    await keep(buildId, late);
    const done = await post(`/api/v1/builds/${buildId}/sheet`, {
      ...HOW,
      arms: 'before',
      readings: [
        { ...lift(5, '.525 in'), armId: e },
        { ...lift(4, '.560 in'), armId: d },
      ],
    });
    expect(done.status).toBe(201);
    const { json } = await sheetOf(buildId);
    expect(at(json, 'springs', 0, 'swaps', 0, 'verdict')).toBe('part');
  });
});
