import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { guarded, readCsv, unguarded, writeCsv } from '../../server/records/catalogue/csv-text.ts';
import { demoCatalogueFile } from '../../server/records/catalogue/demo.ts';
import { memberOf } from '../../shared/member.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let owner: Person;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
});
afterAll(() => service.close());

const load = (who: { authorization: string }, body: object) =>
  sendJson(service, who, 'POST', '/api/v1/catalogue/loads', body);

async function codes(who: Person): Promise<unknown[]> {
  const { json } = await sendJson(service, who.bearer, 'GET', '/api/v1/catalogue?limit=200');
  const families: unknown = json.families;
  return Array.isArray(families) ? families.map((each: unknown) => memberOf(each, 'code')) : [];
}

async function file(who: Person): Promise<string> {
  return String((await sendJson(service, who.bearer, 'GET', '/api/v1/catalogue/file')).json.csv);
}

const FAULTY = [
  'code,name,mount,hole_in,body_width_in,weight',
  'A-1,First,stud,.4375,.82,1',
  'A-2,,stud,.375,.80,1',
  'A-3,Third,bolt,.375,.80,1',
  'A-4,Fourth,stud,4.375,.80,1',
  'A-5,Fifth,stud,.375,wide,-1',
  'A-1,Again,stud,.375,.80,1',
  'A-7,Short,stud',
].join('\n');

describe('loading the catalogue', () => {
  test('a dry run tells each fault with row, column, code and typed text, and loads nothing', async () => {
    const { status, json } = await load(owner.bearer, { csv: FAULTY, dryRun: true });
    expect(status).toBe(200);
    expect(json).toMatchObject({ rows: 7, added: 1, changed: 0, unchanged: 0, loaded: false });
    const faults: unknown = json.faults;
    expect(
      Array.isArray(faults) ? faults.map(({ detail: _, ...rest }: Record<string, unknown>) => rest) : [],
    ).toEqual([
      { row: 3, field: 'name', code: 'required', typed: '' },
      { row: 4, field: 'mount', code: 'not-allowed', typed: 'bolt' },
      { row: 5, field: 'hole_in', code: 'out-of-range', typed: '4.375' },
      { row: 6, field: 'body_width_in', code: 'not-a-number', typed: 'wide' },
      { row: 6, field: 'weight', code: 'out-of-range', typed: '-1' },
      { row: 7, field: 'code', code: 'not-allowed', typed: 'A-1' },
      { row: 8, field: '', code: 'not-allowed', typed: 'A-7,Short,stud' },
    ]);
    expect(await codes(owner)).toEqual([]);
  });

  test('all or nothing unless the good rows are asked for', async () => {
    const refused = await load(owner.bearer, { csv: FAULTY });
    expect(refused.status).toBe(422);
    const errors: unknown = refused.json.errors;
    expect(errors).toContainEqual(
      expect.objectContaining({ pointer: '/csv/5/hole_in', code: 'out-of-range', received: '4.375' }),
    );
    expect(await codes(owner)).toEqual([]);
    const partial = await load(owner.bearer, { csv: FAULTY, partial: true });
    expect(partial.json).toMatchObject({ rows: 7, added: 1, loaded: true });
    expect(await codes(owner)).toEqual(['A-1']);
  });

  test('the same file twice adds nothing; a changed row changes its family; absent columns stay', async () => {
    const shop = await service.person();
    const csv = demoCatalogueFile();
    const first = await load(shop.bearer, { csv });
    expect(first.json).toMatchObject({ added: 69, changed: 0, unchanged: 0, faults: [] });
    const again = await load(shop.bearer, { csv });
    expect(again.json).toMatchObject({ added: 0, changed: 0, unchanged: 69 });
    const changed = await load(shop.bearer, { csv: 'code,name,hole_in\nDEMO-SOR-150-A,Sorrel renamed,' });
    expect(changed.json).toMatchObject({ added: 0, changed: 1 });
    const { json } = await sendJson(service, shop.bearer, 'GET', '/api/v1/catalogue?search=renamed');
    expect(json.families).toEqual([
      expect.objectContaining({ name: 'Sorrel renamed', bodyWidth: { value: 0.82, unit: 'in' } }),
    ]);
    expect(JSON.stringify(json.families)).not.toContain('holeAcrossTrunnion');
  });

  test('two loads at the same moment add each code once', async () => {
    const shop = await service.person();
    const csv = 'code,name\nX-1,One\nX-2,Two';
    const both = await Promise.all([load(shop.bearer, { csv }), load(shop.bearer, { csv })]);
    expect(both.map(({ status }) => status)).toEqual([200, 200]);
    expect(both.map(({ json }) => json.added).sort()).toEqual([0, 2]);
    expect(await codes(shop)).toEqual(['X-1', 'X-2']);
  });

  test('sizes as they are written in the trade; sheets copied with tabs, files with semicolons', async () => {
    const shop = await service.person();
    const csv = 'code\tname\thole_in\twidth_across_trunnion_in\nT-1\tTabs\t7/16\t30.48 mm\n';
    expect((await load(shop.bearer, { csv })).json).toMatchObject({ added: 1 });
    expect((await load(shop.bearer, { csv })).json).toMatchObject({ unchanged: 1 });
    const semicolons = 'code;name;hole_in\r\nT-2;Semicolons;,4375\r\n';
    expect((await load(shop.bearer, { csv: semicolons })).json).toMatchObject({ added: 1 });
    const { json } = await sendJson(service, shop.bearer, 'GET', '/api/v1/catalogue');
    expect(json.families).toMatchObject([
      { holeAcrossTrunnion: { value: 0.4375, unit: 'in' }, widthAcrossTrunnion: { value: 1.2, unit: 'in' } },
      { holeAcrossTrunnion: { value: 0.4375, unit: 'in' } },
    ]);
  });

  test.each([
    ['no header that is known', 'a,b\n1,2', 1, 'unknown-field'],
    ['a column twice', 'code,name,name\n1,2,3', 1, 'not-allowed'],
    ['a quote that never closes', 'code,name\n1,"two', 2, 'not-allowed'],
    ['only a code', 'code\n1', 1, 'required'],
  ])('a file with %s is refused as a whole', async (_, csv, row, code) => {
    const { json } = await load(owner.bearer, { csv, dryRun: true });
    expect(json.faults).toContainEqual(expect.objectContaining({ row, code }));
    expect((await load(owner.bearer, { csv, partial: true })).status).toBe(422);
  });

  test('who may load: an administrator or a key that writes; nobody of another shop sees it', async () => {
    const desk = await service.person({ roles: ['desk'], shopId: owner.shopId });
    expect((await load(desk.bearer, { csv: 'code,name\nN-1,No' })).status).toBe(403);
    expect(await codes(desk)).toContain('A-1');
    const stranger = await service.person();
    expect(await codes(stranger)).toEqual([]);
    const { json } = await sendJson(service, owner.bearer, 'GET', '/api/v1/catalogue');
    const families: unknown = json.families;
    const id = String(Array.isArray(families) ? memberOf(families[0], 'id') : '');
    expect((await sendJson(service, owner.bearer, 'GET', `/api/v1/catalogue/${id}`)).status).toBe(200);
    expect((await sendJson(service, stranger.bearer, 'GET', `/api/v1/catalogue/${id}`)).status).toBe(404);
    const call = await openCall(service, owner, 'For a link');
    const link = await sendJson(service, owner.bearer, 'POST', `/api/v1/calls/${call.callId}/share-links`, {
      holder: 'B',
      days: 1,
    });
    const builder = { authorization: `Bearer ${String(link.json.secret)}` };
    expect((await sendJson(service, builder, 'GET', '/api/v1/catalogue')).status).toBe(404);
    expect((await load(builder, { csv: 'code,name\nN-1,No' })).status).toBe(404);
  });

  test('pages of the list by code', async () => {
    const shop = await service.person();
    await load(shop.bearer, { csv: demoCatalogueFile() });
    const seen: unknown[] = [];
    let after = '';
    for (let page = 0; page < 10; page++) {
      const { json } = await sendJson(
        service,
        shop.bearer,
        'GET',
        `/api/v1/catalogue?limit=30${after === '' ? '' : `&after=${encodeURIComponent(after)}`}`,
      );
      const families: unknown = json.families;
      if (Array.isArray(families)) seen.push(...families.map((each: unknown) => memberOf(each, 'code')));
      if (typeof json.next !== 'string') break;
      after = json.next;
    }
    expect(seen).toHaveLength(69);
    expect(new Set(seen).size).toBe(69);
  });
});

describe('the catalogue as a file', () => {
  test('RFC 4180: commas, CRLF, quotes doubled', () => {
    // RFC 4180 section 2, rules 1, 5, 6 and 7.
    expect(writeCsv([['aaa', 'b,b', 'c"c', 'd\r\nd']])).toBe('aaa,"b,b","c""c","d\r\nd"\r\n');
  });

  test('what a spreadsheet would run is guarded, in text columns only, and comes back as it was', async () => {
    const shop = await service.person();
    const texts = ['=1+1', '+1', '-1', '@x', '\tx', "'=x", "'quoted", 'plain', '−.004', 'a, "b"', 'ä\r\nö'];
    const rows = texts.map((text, index) => [`C-${index}`, `n${index}`, guarded(text), '.4375']);
    const csv = writeCsv([['code', 'name', 'notes', 'hole_in'], ...rows]);
    expect((await load(shop.bearer, { csv })).json).toMatchObject({ added: texts.length, faults: [] });
    const { json } = await sendJson(service, shop.bearer, 'GET', '/api/v1/catalogue?limit=200');
    const families: unknown = json.families;
    const notes = Array.isArray(families)
      ? new Map(families.map((each: unknown) => [memberOf(each, 'code'), memberOf(each, 'notes')]))
      : new Map();
    texts.forEach((text, index) => void expect(notes.get(`C-${index}`)).toBe(text));
    const out = await file(shop);
    expect(out).toContain("'=1+1");
    expect(out).toContain("''=x");
    expect(out).toContain(',0.4375,');
    const back = await load(shop.bearer, { csv: out });
    expect(back.json).toMatchObject({ added: 0, changed: 0, unchanged: texts.length });
    expect(await file(shop)).toBe(out);
  });

  test('saved and loaded into another shop it is the same file', async () => {
    const one = await service.person();
    const other = await service.person();
    await load(one.bearer, { csv: demoCatalogueFile() });
    const out = await file(one);
    await load(other.bearer, { csv: out });
    expect(await file(other)).toBe(out);
  });

  test('any text survives guarding and the file', () => {
    const holds = () =>
      fc.assert(
        fc.property(fc.string({ unit: 'grapheme' }), (text) => {
          expect(unguarded(guarded(text))).toBe(text);
          expect(guarded(text)).not.toMatch(/^[=+\-@\t\r]/);
          const read = readCsv(
            writeCsv([
              ['a', 'b'],
              [guarded(text), 'x'],
            ]),
          );
          expect(read.ok && unguarded(read.rows[1]?.cells[0] ?? '')).toBe(text);
        }),
      );
    expect(holds).not.toThrow();
  });
});
