import { describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { measuredPages, read } from './measured-pages.ts';

const { freshCall, open, page } = measuredPages();

/* Figures are invented: .340 × 1.5 − .016 = .494, and 2.300 − 1.950 − .494 / 2 = .103. */
const SPEC = {
  engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'shaft' },
  cam: { assumedRatio: 1.5, lashAt: 'hot', intake: { lobeLift: '.340 in', lash: '.016 in' } },
  rockers: { nominalRatio: 1.5, pivotToTip: '1.5 in' },
};
const STAND = { pivotHeight: '1.95 in', tipHeight: '2.3 in', netLift: '.494 in', pivotToTip: '1.5 in' };
/* .006 / (1.5 × .05) = .08 of a turn. */
const TURN = {
  thread: '7/16-20',
  mount: 'cup-screw',
  ratio: 1.5,
  lifter: 'solid',
  lashFound: '.022 in',
  lashWanted: '.016 in',
};

async function send(method: 'POST' | 'PUT', path: string, body: object, headers = {}): Promise<void> {
  const { service, person, buildId } = open();
  const { status, text } = await sendJson(
    service,
    person.bearer,
    method,
    `/api/v1/builds/${buildId}/${path}`,
    body,
    headers,
  );
  if (status >= 300) throw new Error(`${status} ${text}`);
}

const keep = (computation: string, inputs: object) => send('POST', 'workings', { computation, inputs });

async function whole(at: string): Promise<string> {
  const { service, person, callId } = open();
  const answer = await service.request({ url: `/calls/${callId}/${at}`, cookies: person.cookies });
  expect([at, answer.statusCode]).toEqual([at, 200]);
  return read(answer.body);
}

describe('what was worked out before the card was put right', () => {
  test('is on no page, no report and no card any more; the page says why', async () => {
    await freshCall(SPEC);
    await keep('stand-height', STAND);
    await keep('adjuster', TURN);
    expect(read(await page('geometry?of=stand-height'))).toContain('.103 in too low');
    expect(read(await page('adjuster?of=adjuster'))).toMatch(/Tighten \.08 turn/);
    const intake = { lobeLift: '.400 in', lash: '.028 in' };
    const spec = { ...SPEC, cam: { ...SPEC.cam, intake } };
    await send('PUT', 'spec', { spec, reason: 'read off the card again' }, { 'if-match': '"2"' });
    const stand = read(await page('geometry?of=stand-height'));
    expect(stand).toContain('What came out of it is not shown');
    // .400 × 1.5 − .028 = .572.
    expect(stand).toContain('By the build the valve lifts .572 in; the sum was made with .494 in.');
    const pages = [
      stand,
      read(await page('adjuster?of=adjuster')),
      ...(await Promise.all(['report', 'takeover'].map(whole))),
    ];
    for (const text of pages) expect(text).not.toMatch(/\.103 in|[Tt]ighten \.08|\.08 turn/);
  });
});
