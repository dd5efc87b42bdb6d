import { afterAll, beforeAll, expect, test } from 'vitest';
import { asked, described, type Entry, onSheet } from '../calls/entry.ts';
import { facesRead } from '../calls/faces.ts';
import { openToPlay } from '../calls/play.ts';
import { saidIn } from '../calls/said.ts';
import { sendJson } from '../tools/call.ts';
import { tellsInches } from '../tools/inch-figures.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const METRIC: Entry = { method: 'PUT', path: 'build/units', body: { units: 'metric' } };
const ENGINE = described({
  engine: { cylinders: 4, lifter: 'solid-flat', rockerMounting: 'stud', use: 'street' },
});
const gap = (reading: string) => ({ cylinder: 1, valve: 'intake', kind: 'piston-to-valve', reading });

async function metricCall() {
  const playing = await openToPlay(service, person, 'clearances-after-a-change');
  for (const entry of [METRIC, asked('none', 'apart'), ENGINE]) await playing.enter(entry);
  return playing;
}

/* Invented gaps; a figure in millimetres stays what it was typed as, whatever the arithmetic is done in. */
test.each(['2.05', '2.27', '3.49'])('a gap of %s mm is that on every face', async (typed) => {
  const playing = await metricCall();
  await playing.enter(onSheet([gap(`${typed} mm`)]));
  const said = await saidIn(playing);
  expect(said.judgements.map(({ sentence }) => sentence).join('\n')).toContain(`${typed} mm`);
  const value = said.quantities.find(({ id }) => id === 'sheet:piston-to-valve:1-intake')?.value ?? 0;
  expect(value * 25.4).toBeCloseTo(Number(typed), 9);
  for (const { name, lines } of await facesRead(service, person, playing)) {
    expect(lines.filter(tellsInches), name).toEqual([]);
    if (['report', 'takeover', 'steps/sheet'].includes(name))
      expect(
        lines.some((line) => line.includes(typed)),
        name,
      ).toBe(true);
  }
});

test('what a stop refuses is told in millimetres too', async () => {
  const playing = await metricCall();
  await playing.enter(onSheet([gap('1.24 mm')]));
  const url = `/api/v1/builds/${playing.buildId}/sheet`;
  const { status, json } = await sendJson(
    service,
    person.bearer,
    'POST',
    url,
    onSheet([gap('1.30 mm')]).body,
  );
  expect(status).toBe(409);
  expect(json.detail).toMatch(/1\.24 mm/);
  expect(tellsInches(String(json.detail))).toBe(false);
});
