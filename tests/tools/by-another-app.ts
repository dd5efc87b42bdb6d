import { buildApp } from '../../server/app.ts';
import type { Deps } from '../../server/web/deps.ts';
import type { TestService } from './service.ts';

/** The same service answered by an app with something in it put differently; both are closed together. */
export async function byAnotherApp(
  made: TestService,
  differently: Partial<Deps>,
  log?: Parameters<typeof buildApp>[1],
): Promise<TestService> {
  const app = await buildApp({ ...made.deps, ...differently }, log);
  await app.ready();
  return {
    ...made,
    app,
    close: async () => {
      await app.close();
      await made.close();
    },
  };
}
