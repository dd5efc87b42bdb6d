import { describe, expect, test } from 'vitest';
import { describeBuild, openCall, sendJson } from '../../tools/call.ts';
import { SORREL } from '../../tools/demo-catalogue.ts';
import { partsShop } from './parts-shop.ts';

const shop = partsShop();

describe('identifying a part', () => {
  test('a part of the catalogue, measured: its family first, every reading a reason', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Sorrel');
    await shop.kept(buildId, ...SORREL);
    const answer = await shop.foundFirst(buildId);
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
    const { buildId } = await openCall(shop.service, shop.owner, 'Cover');
    await shop.kept(buildId, { kind: 'width-across-trunnion', size: '1.6 in' });
    expect(await shop.foundFirst(buildId)).not.toHaveProperty('cover');
    const bolted = { engine: { coverBolting: 'through-centre' } };
    await describeBuild(shop.service, shop.owner, buildId, bolted);
    const { cover } = await shop.foundFirst(buildId);
    expect(cover?.verdict).toBe('short');
    expect(cover?.settledBy).toMatch(/^Height/);
  });

  test('nothing read: no chance of anything, and the measurement that settles most', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Nothing yet');
    const answer = await shop.foundFirst(buildId);
    expect(answer).toMatchObject({ chances: 'held-back', implied: [] });
    expect(answer).not.toHaveProperty('noneOfThese');
    expect(answer.candidates.every(({ probability }) => probability === undefined)).toBe(true);
    expect(answer.next.every(({ rightFirst }) => rightFirst === undefined)).toBe(true);
    expect(answer.next[0]?.bits).toBeGreaterThan(2);
    expect(answer.next.map(({ bits }) => bits)).toHaveLength(9);
  });

  test('a shop without a catalogue: none of these alone, and nothing to settle', async () => {
    const other = await shop.service.person();
    const { buildId } = await openCall(shop.service, other, 'No catalogue');
    const { json } = await sendJson(
      shop.service,
      other.bearer,
      'GET',
      `/api/v1/builds/${buildId}/identification`,
    );
    expect(json).toMatchObject({ families: 0, parts: [{ candidates: [], noneOfThese: 1 }] });
  });
});
