import { buildApp } from '../../server/app.ts';
import { readConfig } from '../../server/config/config.ts';
import { type TestService, testService } from './service.ts';

/** A service that logs at `info`, with every line that it has written to stdout. */
export async function loggingService(): Promise<{ service: TestService; lines: () => string[] }> {
  const made = await testService();
  const written: string[] = [];
  const config = { ...readConfig({ NODE_ENV: 'test', LOG_LEVEL: 'info' }) };
  const app = await buildApp({ ...made.deps, config }, { write: (line: string) => void written.push(line) });
  await app.ready();
  const service = {
    ...made,
    app,
    close: async () => {
      await app.close();
      await made.close();
    },
  };
  return { service, lines: () => written };
}
