import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { measured } from '../tools/measured-build.ts';
import { at, rowWhere } from '../tools/numbers.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const get = (url: string) => sendJson(service, person.bearer, 'GET', url);

describe('limits', () => {
  test('the defaults with their sources; an administrator’s figure goes before them', async () => {
    const own = await service.person();
    const before = await sendJson(service, own.bearer, 'GET', '/api/v1/limits');
    const bind = rowWhere(before.json, 'limits', 'name', 'coil-bind');
    expect(at(bind, 'value')).toEqual({ value: 0.06, unit: 'in' });
    expect(at(bind, 'revision')).toBe(0);
    const put = await sendJson(service, own.bearer, 'PUT', '/api/v1/limits', {
      limits: [{ name: 'coil-bind', value: '1.6 mm', source: 'invented part maker, sheet 4' }],
    });
    expect(put.status).toBe(200);
    const after = rowWhere(put.json, 'limits', 'name', 'coil-bind');
    expect(at(after, 'value')).toEqual({ value: 1.6, unit: 'mm' });
    expect(at(after, 'source')).toBe('invented part maker, sheet 4');
    expect(at(after, 'revision')).toBe(1);
  });

  test('a change needs the administrator, a known name and a source', async () => {
    const desk = await service.person({ roles: ['desk'] });
    const body = { limits: [{ name: 'coil-bind', value: '.08 in', source: 'x' }] };
    expect((await sendJson(service, desk.bearer, 'PUT', '/api/v1/limits', body)).status).toBe(403);
    const wrong = await sendJson(service, person.bearer, 'PUT', '/api/v1/limits', {
      limits: [{ name: 'no-such', value: '.08 in', source: 'x' }],
    });
    expect(wrong.status).toBe(422);
    expect(at(wrong.json, 'errors', 0, 'pointer')).toBe('/limits/0/name');
    const bare = await sendJson(service, person.bearer, 'PUT', '/api/v1/limits', {
      limits: [{ name: 'coil-bind', value: '.08 in', source: ' ' }],
    });
    expect(at(bare.json, 'errors', 0, 'pointer')).toBe('/limits/0/source');
  });

  test('figures that were kept keep the limit they were judged by', async () => {
    const { buildId, url } = await measured(service, person);
    const first = await sendJson(service, person.bearer, 'POST', url, {});
    expect(first.status).toBe(201);
    await sendJson(service, person.bearer, 'PUT', '/api/v1/limits', {
      limits: [{ name: 'coil-bind', value: '.250 in', source: 'invented part maker' }],
    });
    const now = await get(url);
    expect(at(rowWhere(now.json, 'gaps', 'name', 'coil-bind'), 'verdict')).toBe('short');
    const events = await get(`/api/v1/builds/${buildId}/events`);
    const kept = rowWhere(events.json, 'events', 'kind', 'consequences-kept');
    const limits = at(kept, 'data', 'limits');
    const bind = Array.isArray(limits)
      ? limits.find((limit) => at(limit, 'name') === 'coil-bind')
      : undefined;
    expect(at(bind, 'value')).toBe('.060 in');
    expect(at(bind, 'revision')).toBe(0);
    const gaps = at(kept, 'data', 'gaps');
    const gap = Array.isArray(gaps) ? gaps.find((each) => at(each, 'name') === 'coil-bind') : undefined;
    expect(at(gap, 'verdict')).toBe('clear');
  });

  test('a limit can’t be changed behind its back', async () => {
    for (const statement of ['update shop_limit set value = 0', 'delete from shop_limit'])
      await expect(service.database.asService(statement)).rejects.toThrow(/permission denied/);
  });
});
