import { type BenchService, benchService } from './bench-service.ts';
import { type Bare, bareEcho, barePage, bareStatements } from './floors.ts';
import { hangUp, send } from './http.ts';
import { against, type Compared, quickest, shown } from './measure.ts';

const say = (line: string) => process.stdout.write(`${line}\n`);
const JSON_BODY = { 'content-type': 'application/json' };

function tell(what: string, { ratio, work, floor, ofProcessor }: Compared, onDatabase = true): void {
  // Where a database server does a part of it, our own processor time says little.
  const more = onDatabase ? '' : `; in processor time ${ofProcessor.toFixed(2)}`;
  say(`${what}: ${ratio.toFixed(2)} (${shown(work)} against ${shown(floor)})${more}`);
}

async function ratioRoute(service: BenchService, echo: Bare): Promise<void> {
  const found = service.deps.computations.get('ratio-at-full-lift');
  if (found === undefined) throw new Error('no ratio-at-full-lift');
  const sent = { method: 'POST', headers: JSON_BODY, body: JSON.stringify(found.example.inputs) } as const;
  const compared = await against(
    () => send(200, { ...sent, port: echo.port, path: '/echo' }),
    () => send(200, { ...sent, port: service.port, path: '/api/v1/compute/ratio-at-full-lift' }),
  );
  tell('ratio route against a bare route echoing its body', compared, false);
}

/** The same page through the service and through a bare route with the same statements and the same templates. */
async function page(service: BenchService, what: string, path: string, headers: Record<string, string>) {
  const visit = () => send(200, { port: service.port, method: 'GET', path, headers });
  await visit();
  const { statements, rendered, answer } = await service.heard.during(visit);
  const driver = bareStatements(service.url, statements);
  const bare = await barePage(rendered, statements.length === 0 ? undefined : () => driver.run());
  const visitBare = () => send(200, { port: bare.port, method: 'GET', path: '/page' });
  try {
    const same = (await visitBare()).text.length === answer.text.length;
    if (!same) throw new Error(`the bare route of ${path} answers something else`);
    const compared = await against(visitBare, visit);
    tell(
      `${what} against a bare route with its template, its data and its ${statements.length} messages to the database`,
      compared,
      statements.length > 0,
    );
  } finally {
    await bare.stop();
    await driver.stop();
  }
}

async function reading(service: BenchService): Promise<void> {
  const keep = () =>
    send(201, {
      port: service.port,
      method: 'POST',
      path: `/api/v1/builds/${service.buildId}/set-ups/${service.setUpId}/readings`,
      headers: { ...JSON_BODY, ...service.bearer },
      body: '{"kind":"valve-lift","pass":1,"peak":".842 in"}',
    });
  // Past every other number of the statements, so that the sequence number is known by its value.
  for (let times = 0; times < 300; times += 1) await keep();
  const { statements, answer } = await service.heard.during(keep);
  const { seq }: { seq: number } = JSON.parse(answer.text);
  const driver = bareStatements(service.url, statements, seq);
  try {
    const compared = await against(() => driver.run(), keep);
    tell(
      `keeping a reading against its ${statements.length} messages to the database by the driver alone`,
      compared,
    );
    for (const { text } of statements) say(`    ${text.replace(/\s+/g, ' ').slice(0, 150)}`);
  } finally {
    await driver.stop();
  }
}

async function everyComputation(service: BenchService, echo: Bare): Promise<void> {
  say('Each computation: alone, through HTTP, and the bare route over HTTP with the same body.');
  for (const each of service.deps.computations.values()) {
    const sent = { method: 'POST', headers: JSON_BODY, body: JSON.stringify(each.example.inputs) } as const;
    const alone = await quickest(() => each.run(each.example.inputs, 'inch'), 60);
    const through = await against(
      () => send(200, { ...sent, port: echo.port, path: '/echo' }),
      () => send(200, { ...sent, port: service.port, path: `/api/v1/compute/${each.name}` }),
      { seconds: 1 },
    );
    say(
      `  ${each.name.padEnd(22)} alone ${shown(alone).padStart(9)}   HTTP ${shown(through.work).padStart(9)}   bare ${shown(through.floor).padStart(9)}   ratio ${through.ratio.toFixed(2)}   in processor time ${through.ofProcessor.toFixed(2)}`,
    );
  }
}

const service = await benchService();
const echo = await bareEcho();
try {
  say('Ratios are floor over work, medians of single calls in the same run: 1.00 is as fast as the floor.');
  await ratioRoute(service, echo);
  await page(service, 'the start page', '/', {});
  await page(service, 'the ratio step at the desk', `/calls/${service.callId}/steps/ratio`, service.cookie);
  await reading(service);
  say('');
  await everyComputation(service, echo);
} finally {
  await echo.stop();
  await service.stop();
  hangUp();
}
