import { afterAll, beforeAll } from 'vitest';
import { sendJson } from '../../tools/call.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

export const HOW = { spring: 'light', lifter: 'solid', tool: 'indicator' };

export const lift = (cylinder: number, reading: string, kind = 'valve-lift') => ({
  cylinder,
  valve: 'intake',
  kind,
  reading,
});

/** Invented readings: eight intakes on .350 lobes, the fifth low by .035 at the valve. */
export const EIGHT = [0.56, 0.561, 0.56, 0.559, 0.525, 0.56, 0.561, 0.56].flatMap((each, index) => [
  lift(index + 1, '.350 in', 'lobe-lift'),
  lift(index + 1, `${each} in`),
]);

/** A service for the tests of one file, with what is done to a sheet over JSON. */
export function sheetService() {
  let opened: { service: TestService; person: Person } | undefined;
  const open = () => {
    if (opened === undefined) throw new Error('the service is not open yet');
    return opened;
  };
  beforeAll(async () => {
    const service = await testService();
    opened = { service, person: await service.person() };
  });
  afterAll(() => open().service.close());
  const post = (url: string, body: object) =>
    sendJson(open().service, open().person.bearer, 'POST', url, body);
  return {
    open,
    post,
    sheetOf: (buildId: string, order = 'firing') =>
      sendJson(open().service, open().person.bearer, 'GET', `/api/v1/builds/${buildId}/sheet?order=${order}`),
    async keep(buildId: string, readings: object[], how: object = HOW) {
      const done = await post(`/api/v1/builds/${buildId}/sheet`, { ...how, readings });
      if (done.status !== 201) throw new Error(done.text);
      return done.json;
    },
    async armOn(buildId: string, name: string, cylinder: number): Promise<string> {
      const arm = await post(`/api/v1/builds/${buildId}/arms`, { name });
      await post(`/api/v1/builds/${buildId}/placements`, { armId: arm.json.id, cylinder, valve: 'intake' });
      return String(arm.json.id);
    },
    place: (buildId: string, armId: string, cylinder: number) =>
      post(`/api/v1/builds/${buildId}/placements`, { armId, cylinder, valve: 'intake' }),
  };
}
