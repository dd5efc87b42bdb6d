import { describe, expect, test } from 'vitest';
import { memberOf } from '../../../shared/member.ts';
import { openCall, sendJson } from '../../tools/call.ts';
import { SORREL } from '../../tools/demo-catalogue.ts';
import { partsShop, readingsUrl } from './parts-shop.ts';

const shop = partsShop();

describe('readings of the part', () => {
  test('a correction keeps both, with the reason; a second one is refused; striking takes it out', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Corrections');
    const [id = ''] = await shop.kept(buildId, { kind: 'hole-across-trunnion', size: '.375 in' });
    const url = `${readingsUrl(buildId)}/${id}/corrections`;
    const noReason = await sendJson(shop.service, shop.owner.bearer, 'POST', url, {
      size: '.4355 in',
      reason: ' ',
    });
    expect(noReason.status).toBe(422);
    const done = await sendJson(shop.service, shop.owner.bearer, 'POST', url, {
      size: '.4355 in',
      reason: 'jaws cocked',
    });
    expect(done.status, done.text).toBe(201);
    expect(done.json).toMatchObject({ replaces: id, reason: 'jaws cocked', struck: false });
    const again = await sendJson(shop.service, shop.owner.bearer, 'POST', url, {
      size: '.44 in',
      reason: 'x',
    });
    expect(again.status).toBe(409);
    // The line that a page leads to is said as a number, and not in the sentence alone.
    expect(String(memberOf(again.json, 'detail'))).toContain(
      `Line ${String(memberOf(again.json, 'line'))} stands`,
    );
    const answer = await shop.foundFirst(buildId);
    expect(answer.readings.map(({ readAs }) => readAs)).toEqual(['.375 in', '.4355 in']);
    expect(answer.fasteners).toHaveLength(1);
    const strike = await sendJson(
      shop.service,
      shop.owner.bearer,
      'POST',
      `${readingsUrl(buildId)}/${String(done.json.id)}/corrections`,
      { reason: 'another arm' },
    );
    expect(strike.json).toMatchObject({ struck: true });
    expect((await shop.foundFirst(buildId)).fasteners).toEqual([]);
    const exported = await sendJson(
      shop.service,
      shop.owner.bearer,
      'GET',
      `/api/v1/builds/${buildId}/export`,
    );
    expect(exported.json.partReadings).toHaveLength(3);
  });

  test('the database refuses what the service must not do', async () => {
    for (const statement of [
      'update part_reading set value = 0',
      'delete from part_reading',
      'delete from part_family',
    ])
      await expect(shop.service.database.asService(statement)).rejects.toThrow(/permission denied/);
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
    const { buildId } = await openCall(shop.service, shop.owner, 'Faults');
    const { status, json } = await shop.keep(buildId, body);
    expect(status).toBe(422);
    expect(json.errors).toContainEqual(expect.objectContaining({ pointer, code }));
    expect((await shop.foundFirst(buildId)).readings).toEqual([]);
  });

  test('marks stay word for word in their own field, and change no probability', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Marks');
    await shop.kept(buildId, { kind: 'hole-across-trunnion', size: '.4355 in' });
    const before = await shop.foundFirst(buildId);
    await shop.kept(
      buildId,
      { kind: 'ratio-stamp', mark: ' 16 ', place: 'beside the trunnion, stamped' },
      { kind: 'other-number', mark: '16' },
      { kind: 'other-number', mark: '0417' },
      { kind: 'box-label', mark: '1.6' },
    );
    const after = await shop.foundFirst(buildId);
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
    const { buildId } = await openCall(shop.service, shop.owner, 'Questions');
    await shop.kept(
      buildId,
      { kind: 'hole-across-trunnion', size: '.375 in' },
      { kind: 'hole-across-trunnion', size: '.3785 in' },
      { kind: 'width-across-trunnion', size: '1.6 in' },
      { kind: 'rings', word: 'none' },
    );
    const { questions } = await shop.foundFirst(buildId);
    expect(questions.map(({ code }) => code)).toEqual(['two-sizes', 'rings-against-width']);
  });

  test('a hold closes nothing of a part that is off the engine', async () => {
    const { buildId, callId } = await openCall(shop.service, shop.owner, 'Held');
    const held = await sendJson(shop.service, shop.owner.bearer, 'POST', `/api/v1/calls/${callId}/hold`, {
      reason: 'tight',
    });
    expect(held.status, held.text).toBe(200);
    expect((await shop.keep(buildId, SORREL[0] ?? {})).status).toBe(201);
  });
});

describe('how a size was read', () => {
  test('tool and half-width are kept and shown; a guess is called one', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Tools');
    await shop.kept(
      buildId,
      { kind: 'roller-diameter', size: '.5 in', tool: 'guess' },
      { kind: 'roller-diameter', size: '.496 in', tool: 'caliper', within: '.004 in' },
    );
    const { readings, of, candidates } = await shop.foundFirst(buildId);
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
    const { buildId } = await openCall(shop.service, shop.owner, 'Faults of how');
    const { status, json } = await shop.keep(buildId, body);
    expect(status).toBe(422);
    expect(json.errors).toContainEqual(expect.objectContaining({ pointer, code }));
  });

  test('a correction keeps tool and half-width where neither is said, and takes another tool as a whole', async () => {
    const { buildId } = await openCall(shop.service, shop.owner, 'Corrected tools');
    const [id = ''] = await shop.kept(buildId, {
      kind: 'roller-diameter',
      size: '.5 in',
      tool: 'rule',
      within: '.01 in',
    });
    const correct = async (of: string, body: object) => {
      const url = `${readingsUrl(buildId)}/${of}/corrections`;
      const done = await sendJson(shop.service, shop.owner.bearer, 'POST', url, body);
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
    const { buildId } = await openCall(shop.service, shop.owner, 'Pitch');
    await shop.kept(
      buildId,
      { kind: 'stud-pitch', size: '20 tpi' },
      { kind: 'stud-pitch', size: '.500 in', count: 10 },
      { kind: 'stud-diameter', size: '.4335 in', tool: 'micrometer' },
      { kind: 'pivot-to-tip', size: '36.9 mil' },
      { kind: 'hole-across-trunnion', size: '437 mil' },
    );
    const { readings, stud, questions } = await shop.foundFirst(buildId);
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
