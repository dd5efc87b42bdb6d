import { benchService } from './bench-service.ts';
import { hangUp, send } from './http.ts';

/*
 * How many messages go to the database server, each a wait for it, until an answer is there. The second visit is
 * counted: the first may write down the use of the session.
 */
const say = (line: string) => process.stdout.write(`${line}\n`);

const service = await benchService();
const call = `/calls/${service.callId}`;
const build = `/api/v1/builds/${service.buildId}`;
const setUp = `${build}/set-ups/${service.setUpId}`;
const STEPS = 'triage build cam parts identify ratio sheet consequences geometry timing adjuster notes';

const pages: readonly string[] = [
  ...STEPS.split(' ').map((step) => `${call}/steps/${step}`),
  `${call}/report`,
  `${call}/takeover`,
  `${call}/worksheet`,
  `${call}/photographs`,
  `${call}/share`,
  `${call}/export.json`,
];
const reads: readonly string[] = [
  build,
  `${build}/revisions`,
  `${build}/arms`,
  `${build}/set-ups`,
  `${build}/readings`,
  `${build}/events`,
  `${build}/workings`,
  `${build}/photographs`,
  `${build}/export`,
  `${build}/sheet`,
  `${build}/tip-marks`,
  `${build}/gap-scans`,
  `${build}/lash`,
  `${build}/identification`,
  `${setUp}/ratio`,
  `${setUp}/ratio-through-lift`,
  `${setUp}/explanation`,
  `${setUp}/consequences`,
];

async function count(path: string, headers: Record<string, string>): Promise<void> {
  const visit = () => send(200, { port: service.port, method: 'GET', path, headers });
  await visit();
  const { statements } = await service.heard.during(visit);
  const name = path
    .replace(call, '/calls/{call}')
    .replace(setUp, '…/{set-up}')
    .replace(build, '/builds/{id}');
  say(`${String(statements.length).padStart(4)}  ${name}`);
}

try {
  say('Messages to the database server for one answer:');
  for (const path of pages) await count(path, service.cookie);
  for (const path of reads) await count(path, service.bearer);
} finally {
  await service.stop();
  hangUp();
}
