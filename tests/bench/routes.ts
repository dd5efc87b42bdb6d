import { Agent, request } from 'node:http';
import { benchService } from './bench-service.ts';
import { bareEcho, bareReading } from './floors.ts';
import { against, shown, timed } from './measure.ts';

const agent = new Agent({ keepAlive: true, maxSockets: 1 });

/** One request on a kept connection; the answer is read to its end. */
function send(
  port: number,
  method: string,
  path: string,
  headers: Record<string, string>,
  body?: string,
): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const outgoing = request({ agent, host: '127.0.0.1', port, method, path, headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, text: Buffer.concat(parts).toString() }),
      );
      answer.on('error', reject);
    });
    outgoing.on('error', reject);
    outgoing.end(body);
  });
}

function must(status: number, answer: { status: number; text: string }): void {
  if (answer.status !== status) throw new Error(`answered ${answer.status}: ${answer.text.slice(0, 300)}`);
}

const say = (line: string) => process.stdout.write(`${line}\n`);
const json = { 'content-type': 'application/json' };

const service = await benchService();
const echo = await bareEcho();
const driver = bareReading(service);
try {
  say('Ratios are floor over work in the same run: 1.00 is as fast as the floor.');
  const ratio = service.deps.computations.get('ratio-at-full-lift');
  if (ratio === undefined) throw new Error('no ratio-at-full-lift');
  const body = JSON.stringify(ratio.example.inputs);
  const route = await against(
    async () => must(200, await send(echo.port, 'POST', '/echo', json, body)),
    async () => must(200, await send(service.port, 'POST', '/api/v1/compute/ratio-at-full-lift', json, body)),
  );
  say(
    `ratio route against a bare route echoing its body: ${route.ratio.toFixed(2)} (${shown(route.work)} against ${shown(route.floor)})`,
  );

  const bearer = { ...json, authorization: `Bearer ${service.secret}` };
  const reading = await against(
    () => driver.keep(),
    async () =>
      must(
        201,
        await send(
          service.port,
          'POST',
          `/api/v1/builds/${service.buildId}/set-ups/${service.setUpId}/readings`,
          bearer,
          '{"kind":"valve-lift","pass":1,"peak":".842 in"}',
        ),
      ),
    { roundMs: 1000 },
  );
  say(
    `keeping a reading against its SQL through the driver alone: ${reading.ratio.toFixed(2)} (${shown(reading.work)} against ${shown(reading.floor)})`,
  );

  const page = await against(
    () =>
      service.deps.views.render('/layout', {
        title: 'x',
        body: service.deps.views.render('/pages/home/page', {}),
        nav: [],
      }),
    async () => must(200, await send(service.port, 'GET', '/', {})),
  );
  say(
    `the start page against its template rendered alone: ${page.ratio.toFixed(2)} (${shown(page.work)} against ${shown(page.floor)})`,
  );

  say('');
  say('Each computation: alone, through HTTP, and the bare route over HTTP with the same body.');
  for (const each of service.deps.computations.values()) {
    const payload = JSON.stringify(each.example.inputs);
    const alone = await timed(() => each.run(each.example.inputs, 'inch'), 60, 3);
    const through = await against(
      async () => must(200, await send(echo.port, 'POST', '/echo', json, payload)),
      async () => must(200, await send(service.port, 'POST', `/api/v1/compute/${each.name}`, json, payload)),
      { roundMs: 60, turns: 3 },
    );
    say(
      `  ${each.name.padEnd(22)} alone ${shown(alone).padStart(9)}   HTTP ${shown(through.work).padStart(9)}   bare ${shown(through.floor).padStart(9)}   ratio ${through.ratio.toFixed(2)}`,
    );
  }
} finally {
  await driver.stop();
  await echo.stop();
  await service.stop();
  agent.destroy();
}
