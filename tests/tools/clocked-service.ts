import { byAnotherApp } from './by-another-app.ts';
import { type TestService, testService } from './service.ts';

/** A service by a clock of its own, which the tests move. */
export interface ClockedService {
  readonly service: TestService;
  readonly clock: { now: number };
}

export async function clockedService(
  settings: Parameters<typeof testService>[0] = {},
): Promise<ClockedService> {
  const clock = { now: Date.now() };
  const service = await byAnotherApp(await testService(settings), { now: () => new Date(clock.now) });
  return { service, clock };
}
