import { afterAll, beforeAll, expect, test } from 'vitest';
import { showAssessment } from '../../server/assessment/view/assessment.ts';
import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { drawCall } from '../mechanics/explain-readings/simulated-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { EnteredCall } from './enter-over-http.ts';
import { followCall } from './follow-call.ts';
import { RecordedCall } from './recorded-call.ts';
import { tellTheRest } from './tell.ts';

/** Half of them followed to the end, half with what is known told after the readings. */
const CALLS = 50;
const SEED = 11;

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service?.close());

function inMemory(index: number): RecordedCall {
  const chance = chanceFrom(SEED * 1000 + index);
  const call = drawCall(chance);
  if (index % 2 === 0) return followCall(chance, call, 'of-call').recorded;
  const recorded = new RecordedCall(chance, call, { telling: 'by-answers', tellsSetting: true });
  const valve = { of: 'valve-lift', spring: call.spring, lifter: call.lifter } as const;
  for (const ask of [valve, { of: 'lobe-lift' } as const, { ...valve, lashSet: true }]) recorded.take(ask);
  tellTheRest(recorded);
  return recorded;
}

/** What a figure rests on is sorted by ids, which are others over the routes. */
function inOneOrder(value: unknown): unknown {
  if (Array.isArray(value)) {
    const items = value.map(inOneOrder);
    return items.every((item) => typeof item === 'string') ? items.sort() : items;
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, inOneOrder(each)]));
}

test(`${CALLS} simulated calls entered over the routes: the same assessment to the letter`, async () => {
  for (let index = 0; index < CALLS; index += 1) {
    const recorded = inMemory(index);
    const entered = await EnteredCall.open(service, desk);
    for (const command of recorded.build.entered) await entered.enter(command);
    const here: unknown = JSON.parse(JSON.stringify(showAssessment(recorded.build.assess())));
    expect([index, inOneOrder(await entered.assessment())]).toEqual([index, inOneOrder(here)]);
  }
});
