import { describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../../tools/call.ts';
import { SORREL } from '../../tools/demo-catalogue.ts';
import { partsShop } from './parts-shop.ts';

const shop = partsShop();

describe('several parts in the hand', () => {
  const partsUrl = (buildId: string) => `/api/v1/builds/${buildId}/identification/parts`;
  const post = (url: string, body: object, who = shop.owner.bearer) =>
    sendJson(shop.service, who, 'POST', url, body);

  test('a part has its name, its arm with marks and valve, and readings of its own', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Two parts');
    const arm = await post(`/api/v1/builds/${buildId}/arms`, {
      name: 'E',
      ratioStamp: '1.6',
      otherNumber: 'K7',
    });
    expect(arm.status, arm.text).toBe(201);
    const armId = String(arm.json.id);
    const seat = await post(`/api/v1/builds/${buildId}/placements`, { armId, cylinder: 5, valve: 'intake' });
    expect(seat.status, seat.text).toBe(201);
    await shop.kept(buildId, ...SORREL);
    const added = await post(partsUrl(buildId), { name: 'the fifth one', armId });
    expect(added.status, added.text).toBe(201);
    const partId = String(added.json.id);
    await shop.kept(buildId, { kind: 'hole-across-trunnion', size: '.3735 in', partId });
    const { parts, readings } = await shop.found(buildId);
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
    const exported = await sendJson(
      shop.service,
      shop.owner.bearer,
      'GET',
      `/api/v1/builds/${buildId}/export`,
    );
    expect(exported.json.handParts).toEqual([
      expect.objectContaining({ id: partId, name: 'the fifth one', armId }),
    ]);
  });

  test('a name is changed and the first part gets one; two parts are not called the same', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Names');
    const added = await post(partsUrl(buildId), { name: 'from the box' });
    const partId = String(added.json.id);
    const names = `${partsUrl(buildId)}/names`;
    expect((await post(names, { name: 'off the engine' })).status).toBe(201);
    expect((await post(names, { partId, name: 'the spare' })).status).toBe(201);
    expect((await post(partsUrl(buildId), { name: 'the spare' })).status).toBe(409);
    expect((await shop.found(buildId)).parts.map(({ name }) => name)).toEqual([
      'off the engine',
      'the spare',
    ]);
  });

  test('a part of another build, or of another shop, is not there', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Here');
    const other = await openCall(shop.service, shop.owner, 'There');
    const added = await post(partsUrl(other.buildId), { name: 'elsewhere' });
    const partId = String(added.json.id);
    const reading = { kind: 'roller-diameter', size: '.496 in', partId };
    expect((await shop.keep(buildId, reading)).status).toBe(404);
    expect((await post(`${partsUrl(buildId)}/names`, { partId, name: 'mine' })).status).toBe(404);
    const stranger = await shop.service.person();
    expect((await shop.keep(other.buildId, reading, stranger.bearer)).status).toBe(404);
  });

  test('the answer to a size that cannot be changes the ranking', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Slip');
    const slipped = SORREL.map((each) =>
      each.kind === 'roller-diameter' ? { ...each, size: '4.96 in' } : each,
    );
    await shop.kept(buildId, ...slipped);
    const before = await shop.foundFirst(buildId);
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
    const after = await shop.foundFirst(buildId);
    expect(after.of.every(({ counts }) => counts === 'yes')).toBe(true);
    expect(after.candidates[0]?.probability ?? 0).toBeGreaterThan(before.candidates[0]?.probability ?? 1);
    // The entry is as it was typed.
    expect(after.readings.find(({ kind }) => kind === 'roller-diameter')?.typed).toBe('4.96 in');
  });
});
