import { buildApp } from '../../server/app.ts';
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
  const made = await testService(settings);
  const app = await buildApp({ ...made.deps, now: () => new Date(clock.now) });
  await app.ready();
  const service = {
    ...made,
    app,
    close: async () => {
      await app.close();
      await made.close();
    },
  };
  return { service, clock };
}
