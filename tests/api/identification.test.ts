import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { identificationView } from '../../server/assessment/identification/view.ts';
import { demoCatalogueFile } from '../../server/records/catalogue/demo.ts';
import { memberOf } from '../../shared/member.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let owner: Person;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  const loaded = await sendJson(service, owner.bearer, 'POST', '/api/v1/catalogue/loads', {
    csv: demoCatalogueFile(),
  });
  expect(loaded.status).toBe(200);
});
afterAll(() => service.close());

const readingsUrl = (buildId: string) => `/api/v1/builds/${buildId}/identification/readings`;

const keep = (buildId: string, body: object, who = owner.bearer) =>
  sendJson(service, who, 'POST', readingsUrl(buildId), body);

async function kept(buildId: string, ...bodies: object[]): Promise<string[]> {
  const ids: string[] = [];
  for (const body of bodies) {
    const { status, json, text } = await keep(buildId, body);
    expect(status, text).toBe(201);
    ids.push(String(json.id));
  }
  return ids;
}

async function found(buildId: string) {
  const { status, json, text } = await sendJson(
    service,
    owner.bearer,
    'GET',
    `/api/v1/builds/${buildId}/identification`,
  );
  expect(status, text).toBe(200);
  return identificationView.parse(json);
}

/** The same of the one part in the hand. */
async function foundFirst(buildId: string) {
  const { parts, ...whole } = await found(buildId);
  const [part] = parts;
  if (part === undefined) throw new Error('there is a part in the hand');
  return { ...whole, ...part, readings: whole.readings, of: part.readings };
}

const SORREL = [
  { kind: 'hole-across-trunnion', size: '.4355 in' },
  { kind: 'hole-across-trunnion', size: '.4362 in', place: 'turned a quarter turn' },
  { kind: 'width-across-trunnion', size: '1.600 in' },
  { kind: 'roller-diameter', size: '.496 in' },
  { kind: 'body-width', size: '.841 in' },
  { kind: 'pivot-to-tip', size: '36.9 mm' },
  { kind: 'pivot-to-cup', size: '.911 in' },
  { kind: 'rings', word: 'visible' },
  { kind: 'tip', word: 'roller' },
  { kind: 'mount', word: 'stud' },
];

describe('identifying a part', () => {
  test('a part of the catalogue, measured: its family first, every reading a reason', async () => {
    const { buildId } = await openCall(service, owner, 'Sorrel');
    await kept(buildId, ...SORREL);
    const answer = await foundFirst(buildId);
    expect(answer.families).toBe(69);
    const [first] = answer.candidates;
    expect(first).toMatchObject({ code: 'DEMO-SOR-160-B', nominalRatio: 1.6 });
    expect(first?.probability).toBeGreaterThan(0.8);
    expect(first?.reasons.map(({ word }) => word)).toEqual(SORREL.map(() => 'agrees'));
    expect(answer.noneOfThese).toBeLessThan(0.1);
    // ASME B1.1: 7/16 is made as 14 UNC and 20 UNF; the hole can't tell them apart.
    expect(
      answer.fasteners.map(({ threads }) => threads.map(({ designation }) => designation).sort()),
    ).toEqual([
      ['7/16-14 UNC', '7/16-20 UNF'],
      ['7/16-14 UNC', '7/16-20 UNF'],
    ]);
    expect(answer.fasteners[0]?.ask).toContain('14 or 20');
    expect(answer.next).toEqual([]);
    expect(answer.readings[5]).toMatchObject({ typed: '36.9 mm', size: { value: 36.9, unit: 'mm' } });
  });

  test('the cover: needs to know how it is bolted, then speaks of sideways room only', async () => {
    const { buildId } = await openCall(service, owner, 'Cover');
    await kept(buildId, { kind: 'width-across-trunnion', size: '1.6 in' });
    expect(await foundFirst(buildId)).not.toHaveProperty('cover');
    const revised = await sendJson(
      service,
      owner.bearer,
      'PUT',
      `/api/v1/builds/${buildId}/spec`,
      { spec: { engine: { coverBolting: 'through-centre' } } },
      { 'if-match': '"1"' },
    );
    expect(revised.status, revised.text).toBe(200);
    const { cover } = await foundFirst(buildId);
    expect(cover?.verdict).toBe('short');
    expect(cover?.settledBy).toContain('height');
  });

  test('nothing read: no chance of anything, and the measurement that settles most', async () => {
    const { buildId } = await openCall(service, owner, 'Nothing yet');
    const answer = await foundFirst(buildId);
    expect(answer).toMatchObject({ chances: 'held-back', implied: [] });
    expect(answer).not.toHaveProperty('noneOfThese');
    expect(answer.candidates.every(({ probability }) => probability === undefined)).toBe(true);
    expect(answer.next.every(({ rightFirst }) => rightFirst === undefined)).toBe(true);
    expect(answer.next[0]?.bits).toBeGreaterThan(2);
    expect(answer.next.map(({ bits }) => bits)).toHaveLength(9);
  });

  test('a shop without a catalogue: none of these alone, and nothing to settle', async () => {
    const other = await service.person();
    const { buildId } = await openCall(service, other, 'No catalogue');
    const { json } = await sendJson(service, other.bearer, 'GET', `/api/v1/builds/${buildId}/identification`);
    expect(json).toMatchObject({ families: 0, parts: [{ candidates: [], noneOfThese: 1 }] });
  });
});

describe('readings of the part', () => {
  test('a correction keeps both, with the reason; a second one is refused; striking takes it out', async () => {
    const { buildId } = await openCall(service, owner, 'Corrections');
    const [id = ''] = await kept(buildId, { kind: 'hole-across-trunnion', size: '.375 in' });
    const url = `${readingsUrl(buildId)}/${id}/corrections`;
    const noReason = await sendJson(service, owner.bearer, 'POST', url, { size: '.4355 in', reason: ' ' });
    expect(noReason.status).toBe(422);
    const done = await sendJson(service, owner.bearer, 'POST', url, {
      size: '.4355 in',
      reason: 'jaws cocked',
    });
    expect(done.status, done.text).toBe(201);
    expect(done.json).toMatchObject({ replaces: id, reason: 'jaws cocked', struck: false });
    const again = await sendJson(service, owner.bearer, 'POST', url, { size: '.44 in', reason: 'x' });
    expect(again.status).toBe(409);
    // The line that a page leads to is said as a number, and not in the sentence alone.
    expect(String(memberOf(again.json, 'detail'))).toContain(
      `Line ${String(memberOf(again.json, 'line'))} stands`,
    );
    const answer = await foundFirst(buildId);
    expect(answer.readings.map(({ readAs }) => readAs)).toEqual(['.375 in', '.4355 in']);
    expect(answer.fasteners).toHaveLength(1);
    const strike = await sendJson(
      service,
      owner.bearer,
      'POST',
      `${readingsUrl(buildId)}/${String(done.json.id)}/corrections`,
      { reason: 'another arm' },
    );
    expect(strike.json).toMatchObject({ struck: true });
    expect((await foundFirst(buildId)).fasteners).toEqual([]);
    const exported = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}/export`);
    expect(exported.json.partReadings).toHaveLength(3);
  });

  test('the database refuses what the service must not do', async () => {
    for (const statement of [
      'update part_reading set value = 0',
      'delete from part_reading',
      'delete from part_family',
    ])
      await expect(service.database.asService(statement)).rejects.toThrow(/permission denied/);
  });

  test.each([
    [{ kind: 'hole-across-trunnion' }, '/size', 'required'],
    [{ kind: 'hole-across-trunnion', size: '95 in' }, '/size', 'out-of-range'],
    [{ kind: 'hole-across-trunnion', size: '.4355' }, '/size', 'wrong-dimension'],
    [{ kind: 'hole-across-trunnion', size: '3 deg' }, '/size', 'wrong-dimension'],
    [{ kind: 'rings' }, '/word', 'required'],
    [{ kind: 'rings', word: 'many' }, '/word', 'not-allowed'],
    [{ kind: 'rings', word: '__proto__' }, '/word', 'not-allowed'],
    [{ kind: 'ratio-stamp', mark: '  ' }, '/mark', 'required'],
    [{ kind: 'ratio-stamp', mark: '1.6', size: '1 in' }, '/size', 'not-allowed'],
    [{ kind: 'weight', size: '1 in' }, '/kind', 'not-allowed'],
    [{ kind: 'other-number', mark: 'a\u0000b' }, '/mark', 'not-allowed'],
  ])('%j is told at its field', async (body, pointer, code) => {
    const { buildId } = await openCall(service, owner, 'Faults');
    const { status, json } = await keep(buildId, body);
    expect(status).toBe(422);
    expect(json.errors).toContainEqual(expect.objectContaining({ pointer, code }));
    expect((await foundFirst(buildId)).readings).toEqual([]);
  });

  test('marks stay word for word in their own field, and change no probability', async () => {
    const { buildId } = await openCall(service, owner, 'Marks');
    await kept(buildId, { kind: 'hole-across-trunnion', size: '.4355 in' });
    const before = await foundFirst(buildId);
    await kept(
      buildId,
      { kind: 'ratio-stamp', mark: ' 16 ', place: 'beside the trunnion, stamped' },
      { kind: 'other-number', mark: '16' },
      { kind: 'other-number', mark: '0417' },
      { kind: 'box-label', mark: '1.6' },
    );
    const after = await foundFirst(buildId);
    expect(after.noneOfThese).toBe(before.noneOfThese);
    expect(after.candidates).toEqual(before.candidates);
    expect(after.readings.slice(1).map(({ kind, typed }) => [kind, typed])).toEqual([
      ['ratio-stamp', ' 16 '],
      ['other-number', '16'],
      ['other-number', '0417'],
      ['box-label', '1.6'],
    ]);
    expect(after.questions.map(({ code }) => code)).toEqual([
      'stamp-without-dot',
      'same-text-twice',
      'different-numbers',
    ]);
  });

  test('rings against width, and a hole at two sizes, are asked about', async () => {
    const { buildId } = await openCall(service, owner, 'Questions');
    await kept(
      buildId,
      { kind: 'hole-across-trunnion', size: '.375 in' },
      { kind: 'hole-across-trunnion', size: '.3785 in' },
      { kind: 'width-across-trunnion', size: '1.6 in' },
      { kind: 'rings', word: 'none' },
    );
    const { questions } = await foundFirst(buildId);
    expect(questions.map(({ code }) => code)).toEqual(['two-sizes', 'rings-against-width']);
  });

  test('a hold closes nothing of a part that is off the engine', async () => {
    const { buildId, callId } = await openCall(service, owner, 'Held');
    const held = await sendJson(service, owner.bearer, 'POST', `/api/v1/calls/${callId}/hold`, {
      reason: 'tight',
    });
    expect(held.status, held.text).toBe(200);
    expect((await keep(buildId, SORREL[0] ?? {})).status).toBe(201);
  });
});

describe('how a size was read', () => {
  test('tool and half-width are kept and shown; a guess is called one', async () => {
    const { buildId } = await openCall(service, owner, 'Tools');
    await kept(
      buildId,
      { kind: 'roller-diameter', size: '.5 in', tool: 'guess' },
      { kind: 'roller-diameter', size: '.496 in', tool: 'caliper', within: '.004 in' },
    );
    const { readings, of, candidates } = await foundFirst(buildId);
    expect(readings.map(({ tool, how }) => [tool, how])).toEqual([
      ['guess', 'a guess, ± .060 in'],
      ['caliper', 'by caliper, ± .004 in'],
    ]);
    expect(readings[1]?.within).toMatchObject({ typed: '.004 in', unit: 'in' });
    expect(of.map(({ guess }) => guess).sort()).toEqual([false, true]);
    const reasons = candidates[0]?.reasons ?? [];
    expect(reasons.map(({ guess }) => guess).sort()).toEqual([false, true]);
    expect(reasons.find(({ guess }) => !guess)?.within).toEqual({ value: 0.004, unit: 'in' });
  });

  test.each([
    [{ kind: 'rings', word: 'visible', within: '.01 in' }, '/within', 'not-allowed'],
    [{ kind: 'roller-diameter', size: '.5 in', count: 10 }, '/count', 'not-allowed'],
    [{ kind: 'roller-diameter', size: '.5 in', within: '.5 in' }, '/within', 'out-of-range'],
    [{ kind: 'roller-diameter', size: '.5 in', tool: 'eye' }, '/tool', 'not-allowed'],
  ])('%j is told at its field', async (body, pointer, code) => {
    const { buildId } = await openCall(service, owner, 'Faults of how');
    const { status, json } = await keep(buildId, body);
    expect(status).toBe(422);
    expect(json.errors).toContainEqual(expect.objectContaining({ pointer, code }));
  });

  test('a correction keeps tool and half-width where neither is said, and takes another tool as a whole', async () => {
    const { buildId } = await openCall(service, owner, 'Corrected tools');
    const [id = ''] = await kept(buildId, {
      kind: 'roller-diameter',
      size: '.5 in',
      tool: 'rule',
      within: '.01 in',
    });
    const correct = async (of: string, body: object) => {
      const url = `${readingsUrl(buildId)}/${of}/corrections`;
      const done = await sendJson(service, owner.bearer, 'POST', url, body);
      expect(done.status, done.text).toBe(201);
      return done.json;
    };
    const same = await correct(id, { size: '.51 in', reason: 'read again' });
    expect(same).toMatchObject({ tool: 'rule', how: 'by rule, ± .010 in' });
    const other = await correct(String(same.id), { size: '.496 in', tool: 'caliper', reason: 'by caliper' });
    expect(other).toMatchObject({ tool: 'caliper', how: 'by caliper, ± .002 in' });
    expect(other).not.toHaveProperty('within');
  });

  test('a pitch: threads to the inch, or threads counted over a length; “mil” as the place allows', async () => {
    const { buildId } = await openCall(service, owner, 'Pitch');
    await kept(
      buildId,
      { kind: 'stud-pitch', size: '20 tpi' },
      { kind: 'stud-pitch', size: '.500 in', count: 10 },
      { kind: 'stud-diameter', size: '.4335 in', tool: 'micrometer' },
      { kind: 'pivot-to-tip', size: '36.9 mil' },
      { kind: 'hole-across-trunnion', size: '437 mil' },
    );
    const { readings, stud, questions } = await foundFirst(buildId);
    expect(readings.map(({ readAs, typed }) => [readAs, typed])).toEqual([
      ['20 threads to the inch', '20 tpi'],
      ['10 threads over .500 in', '.500 in'],
      ['.4335 in', '.4335 in'],
      ['36.9 mm', '36.9 mil'],
      ['437 thou = .437 in', '437 mil'],
    ]);
    expect(stud?.threads.map(({ designation }) => designation)).toEqual(['7/16-20 UNF']);
    expect(questions.map(({ code }) => code)).toEqual(['mil-said', 'mil-said']);
  });
});

describe('several parts in the hand', () => {
  const partsUrl = (buildId: string) => `/api/v1/builds/${buildId}/identification/parts`;
  const post = (url: string, body: object, who = owner.bearer) => sendJson(service, who, 'POST', url, body);

  test('a part has its name, its arm with marks and valve, and readings of its own', async () => {
    const { buildId } = await openCall(service, owner, 'Two parts');
    const arm = await post(`/api/v1/builds/${buildId}/arms`, {
      name: 'E',
      ratioStamp: '1.6',
      otherNumber: 'K7',
    });
    expect(arm.status, arm.text).toBe(201);
    const armId = String(arm.json.id);
    const seat = await post(`/api/v1/builds/${buildId}/placements`, { armId, cylinder: 5, valve: 'intake' });
    expect(seat.status, seat.text).toBe(201);
    await kept(buildId, ...SORREL);
    const added = await post(partsUrl(buildId), { name: 'the fifth one', armId });
    expect(added.status, added.text).toBe(201);
    const partId = String(added.json.id);
    await kept(buildId, { kind: 'hole-across-trunnion', size: '.3735 in', partId });
    const { parts, readings } = await found(buildId);
    expect(parts.map((part) => [part.partId, part.name])).toEqual([
      [undefined, 'the first part'],
      [partId, 'the fifth one'],
    ]);
    expect(parts[1]?.arm?.sentence).toBe(
      'It is the arm “E”: ratio stamp “1.6”, other number “K7”; it sits on 5 intake now.',
    );
    expect(parts[1]?.fasteners[0]?.threads[0]?.designation).toMatch(/^3\/8/);
    expect(parts[0]?.candidates[0]?.code).toBe('DEMO-SOR-160-B');
    expect(readings.at(-1)?.partId).toBe(partId);
    const exported = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}/export`);
    expect(exported.json.handParts).toEqual([
      expect.objectContaining({ id: partId, name: 'the fifth one', armId }),
    ]);
  });

  test('a name is changed and the first part gets one; two parts are not called the same', async () => {
    const { buildId } = await openCall(service, owner, 'Names');
    const added = await post(partsUrl(buildId), { name: 'from the box' });
    const partId = String(added.json.id);
    const names = `${partsUrl(buildId)}/names`;
    expect((await post(names, { name: 'off the engine' })).status).toBe(201);
    expect((await post(names, { partId, name: 'the spare' })).status).toBe(201);
    expect((await post(partsUrl(buildId), { name: 'the spare' })).status).toBe(409);
    expect((await found(buildId)).parts.map(({ name }) => name)).toEqual(['off the engine', 'the spare']);
  });

  test('a part of another build, or of another shop, is not there', async () => {
    const { buildId } = await openCall(service, owner, 'Here');
    const other = await openCall(service, owner, 'There');
    const added = await post(partsUrl(other.buildId), { name: 'elsewhere' });
    const partId = String(added.json.id);
    const reading = { kind: 'roller-diameter', size: '.496 in', partId };
    expect((await keep(buildId, reading)).status).toBe(404);
    expect((await post(`${partsUrl(buildId)}/names`, { partId, name: 'mine' })).status).toBe(404);
    const stranger = await service.person();
    expect((await keep(other.buildId, reading, stranger.bearer)).status).toBe(404);
  });

  test('the answer to a size that cannot be changes the ranking', async () => {
    const { buildId } = await openCall(service, owner, 'Slip');
    const slipped = SORREL.map((each) =>
      each.kind === 'roller-diameter' ? { ...each, size: '4.96 in' } : each,
    );
    await kept(buildId, ...slipped);
    const before = await foundFirst(buildId);
    const [question] = before.questions;
    expect(question).toMatchObject({ code: 'size-impossible' });
    expect(before.of.filter(({ counts }) => counts === 'waits')).toHaveLength(1);
    const answer = await post(`/api/v1/builds/${buildId}/answers`, {
      questionId: question?.id,
      question: question?.ask.slice(0, 100),
      code: question?.code,
      answer: 'dot-left',
    });
    expect(answer.status, answer.text).toBe(201);
    const after = await foundFirst(buildId);
    expect(after.of.every(({ counts }) => counts === 'yes')).toBe(true);
    expect(after.candidates[0]?.probability ?? 0).toBeGreaterThan(before.candidates[0]?.probability ?? 1);
    // The entry is as it was typed.
    expect(after.readings.find(({ kind }) => kind === 'roller-diameter')?.typed).toBe('4.96 in');
  });
});
