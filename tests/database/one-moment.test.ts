import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/*
 * What a page or an export shows is the record as it stood at one moment, whatever is kept meanwhile (the snapshot
 * of one repeatable-read transaction: PostgreSQL manual, section 13.2.2). Each look goes out together with three
 * commands, so that these end while it reads; what must agree follows from the record's own rules: every command
 * leaves its rows and its event together, and the build counts its events.
 */
const CALLS = 4;
const LOOKS = 25;

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

interface At {
  readonly callId: string;
  readonly buildId: string;
}

async function post(url: string, body: object): Promise<void> {
  const { status, text } = await sendJson(service, person.bearer, 'POST', url, body);
  expect(status, text).toBe(201);
}

const keepSheet = ({ buildId }: At) =>
  post(`/api/v1/builds/${buildId}/sheet`, {
    spring: 'light',
    lifter: 'solid',
    tool: 'indicator',
    readings: [{ cylinder: 1, valve: 'intake', kind: 'lobe-lift', reading: '.350 in' }],
  });

const keepNote = ({ callId }: At) => post(`/api/v1/calls/${callId}/notes`, { kind: 'note', body: 'turning' });

/** Looks at several calls, one after the other, while two readings and something else are kept in each. */
async function lookWhileKeeping(
  somethingElse: (at: At) => Promise<void>,
  look: (callId: string) => Promise<void>,
): Promise<void> {
  for (let call = 0; call < CALLS; call += 1) {
    const at = await openCall(service, person);
    const setUpId = await startSetUp(service, person, at.buildId, { ...METHOD, lobeSource: 'card' });
    // Named, because a set-up takes 99 passes and no more.
    const body = { kind: 'valve-lift', peak: '.842 in', pass: 1 };
    const keep = () => post(`/api/v1/builds/${at.buildId}/set-ups/${setUpId}/readings`, body);
    for (let times = 0; times < LOOKS; times += 1)
      await Promise.all([keep(), somethingElse(at), keep(), look(at.callId)]);
  }
}

async function got(path: string): Promise<string> {
  const answer = await service.app.inject({ method: 'GET', url: path, cookies: person.cookies });
  expect(answer.statusCode, path).toBe(200);
  return answer.body;
}

const numbered = z.object({ seq: z.int() });
const exported = z.object({
  build: z.object({ version: z.int() }),
  readings: z.array(numbered),
  sheetReadings: z.array(numbered),
  events: z.array(numbered.extend({ kind: z.string() })),
});

const upTo = (last: number): number[] => Array.from({ length: last }, (_, index) => index + 1);
const seqs = (of: readonly { readonly seq: number }[]) => of.map(({ seq }) => seq);

describe('while readings are kept', () => {
  it('every export has each reading with its event, and the events up to the version of its build', async () => {
    let most = 0;
    await lookWhileKeeping(keepSheet, async (callId) => {
      const { build, readings, sheetReadings, events } = exported.parse(
        JSON.parse(await got(`/calls/${callId}/export.json`)),
      );
      const of = (kind: string) => seqs(events.filter((event) => event.kind === kind));
      expect(seqs(readings)).toEqual(of('reading-kept'));
      expect(seqs(sheetReadings)).toEqual(of('sheet-readings-kept'));
      expect(seqs(events)).toEqual(upTo(build.version));
      most = Math.max(most, readings.length);
    });
    expect(most, 'there must be readings for this test to mean anything').toBeGreaterThan(LOOKS);
  });

  it('every ratio step has a pass for each reading on its tape, and the tape up to where the live feed goes on', async () => {
    let most = 0;
    await lookWhileKeeping(keepNote, async (callId) => {
      const html = await got(`/calls/${callId}/steps/ratio`);
      const lines = [...html.matchAll(/<li class="tape-line tape-(\w+)[^>]* id="line-(\d+)"/g)];
      const passes = new Set([...html.matchAll(/\/readings\/([0-9a-f-]{36})"/g)].map(([, id]) => id));
      const next = /\?step=ratio&(?:amp;)?after=(\d+)/.exec(html)?.[1];
      const readings = lines.filter(([, kind]) => kind === 'reading');
      expect(lines.map(([, , line]) => Number(line))).toEqual(upTo(Number(next)));
      expect(passes.size).toBe(readings.length);
      most = Math.max(most, passes.size);
    });
    expect(most, 'there must be readings for this test to mean anything').toBeGreaterThan(LOOKS);
  });
});
