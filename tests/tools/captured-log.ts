import { readConfig } from '../../server/config/config.ts';
import { byAnotherApp } from './by-another-app.ts';
import { type TestService, testService } from './service.ts';

/** A service that logs at `info`, with every line that it has written to stdout. */
export async function loggingService(): Promise<{ service: TestService; lines: () => string[] }> {
  const written: string[] = [];
  const config = readConfig({ NODE_ENV: 'test', LOG_LEVEL: 'info' });
  const log = { write: (line: string) => void written.push(line) };
  const service = await byAnotherApp(await testService(), { config }, log);
  return { service, lines: () => written };
}
