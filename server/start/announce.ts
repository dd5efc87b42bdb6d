import type { Config } from '../config/config.ts';
import type { FirstRun } from './first-run.ts';

/** Tells on the terminal where the service is and how to get in. Secrets go here once and into no log. */
export function announce(config: Config, port: number, first: FirstRun): void {
  const host = config.HOST === '0.0.0.0' || config.HOST === '::' ? '127.0.0.1' : config.HOST;
  const base =
    config.PUBLIC_URL?.replace(/\/$/, '') ?? `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
  const lines = [`Benchcall is ready at ${base}`];
  if (first.kind === 'demo') {
    lines.push(
      `  Sign in at ${base}/sign-in with ${first.email} and the password ${first.password}`,
      `  The demo call as the desk sees it: ${base}/calls/${first.callId}`,
      `  The demo call as the builder sees it: ${base}/b/${first.link}`,
      '  The demo shop, its people, parts and lots are invented.',
    );
  }
  if (first.kind === 'first-administrator') {
    lines.push(
      `  Make the first administrator, within a day and once: ${base}/first-administrator/${first.secret}`,
    );
  }
  process.stdout.write(`${lines.join('\n')}\n`);
}
