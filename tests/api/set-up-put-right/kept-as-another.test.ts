import { describe, expect, test } from 'vitest';
import { at } from '../../tools/numbers.ts';
import { fieldsOf, openSetUps } from './set-up-read.ts';

/** What is told of a set-up later holds for the readings already there, by JSON and by form. Figures by hand. */

const { read } = openSetUps();

describe('a pass that was kept as something else', () => {
  test('in JSON: its figure stays, its number is the next of its kind', async () => {
    const { keep, send, get, ratio } = await read({ spring: 'light', lifter: 'solid', lash: 'zero' });
    const id = await keep('valve-lift', '.3495 in');
    expect(at(await ratio(), 'missing')).not.toEqual([]);
    const { json, status } = await send(`/readings/${id}/corrections`, {
      kind: 'lobe-lift',
      reason: 'it was the lobe',
    });
    expect(status).toBe(201);
    expect(json).toMatchObject({ kind: 'lobe-lift', pass: 4, struck: false, replaces: id });
    expect(at(json, 'peak', 'readAs')).toBe('.3495 in');
    expect(at(await ratio(), 'restsOn')).toHaveLength(7);
    const { events } = await get('/events?limit=500');
    expect(at(Array.isArray(events) ? events.at(-1) : {}, 'data', 'wasKind')).toBe('valve-lift');
  });

  test('part of the way up it needs the lobe lift it was read at', async () => {
    const { keep, send } = await read();
    const id = await keep('valve-lift', '.320 in');
    const said = { kind: 'valve-lift-at', reason: 'read at .200' };
    const without = await send(`/readings/${id}/corrections`, said);
    expect([without.status, at(without.json, 'errors', 0, 'pointer')]).toEqual([422, '/atLobeLift']);
    const { json } = await send(`/readings/${id}/corrections`, { ...said, atLobeLift: '.200 in' });
    expect(json).toMatchObject({ kind: 'valve-lift-at', pass: 1 });
  });

  test('on its page the figure may stand', async () => {
    const { keep, page, post, get } = await read();
    const id = await keep('valve-lift', '.3495 in');
    const fields = fieldsOf(await page(`/readings/${id}`), 'correct');
    const changed = { ...fields, kind: 'lobe-lift', reason: 'it was the lobe', act: 'replace' };
    expect((await post(`/readings/${id}/correct`, changed)).statusCode).toBe(303);
    const { readings } = await get('/readings');
    expect(Array.isArray(readings) ? readings.at(-1) : {}).toMatchObject({ kind: 'lobe-lift', pass: 4 });
    // Without a change of kind, the figure has to be typed.
    const lobe = at(await get('/readings'), 'readings', 0, 'id');
    const bare = { kind: 'lobe-lift', reason: 'told', act: 'replace' };
    expect((await post(`/readings/${lobe}/correct`, bare)).statusCode).toBe(422);
  });
});
