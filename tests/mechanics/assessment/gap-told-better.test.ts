import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { CHANGE, gapOf } from './change/change-of-arms.ts';
import { pointsOf, scanEvidence } from './scan-evidence.ts';
import { heard } from './whole-sheet.ts';

/* One gap read several times, each as good as it was read: figures invented, hydraulic lifters so that no lash is in it. */
const BUILD: Evidence = { ...CHANGE, engine: { ...CHANGE.engine, lifter: 'hydraulic-flat' }, springs: {} };
const gap = (id: string, inches: number, more: Partial<SheetEvidence> = {}) =>
  gapOf(id, 'piston-to-valve', inches, { tool: 'indicator', arms: 'before', ...more });
const running = (more: Partial<SheetEvidence> = {}) => gap('running', 0.1, { spring: 'running', ...more });
const sunk = gap('sunk', 0.13, { spring: 'running', lifter: 'hydraulic' });
const light = (inches = 0.096, more: Partial<SheetEvidence> = {}) => gap('light', inches, more);

const ofGap = (sheet: readonly SheetEvidence[], build = BUILD) =>
  heard({ ...build, sheet }).all.judgements.filter(
    ({ against }) => against?.to === 'limit' && against.gap === 'piston-to-valve',
  );
const told = (sheet: readonly SheetEvidence[], build = BUILD) =>
  ofGap(sheet, build).map(({ word, restsOn, lacks }) => [word ?? 'none', restsOn, lacks]);
const asks = (sheet: readonly SheetEvidence[]) => heard({ ...BUILD, sheet }).asks;

describe('a gap that was read badly and then well', () => {
  const worse: readonly (readonly [string, SheetEvidence])[] = [
    ['on the running spring', running()],
    ['on a lifter that sinks', sunk],
    ['on a spring that nobody named', running({ spring: 'not-said' })],
    ['guessed', gap('guess', 0.11, { tool: 'guess' })],
    ['with clay', gap('clay', 0.098, { tool: 'clay' })],
  ];
  test.each(worse)('is told by the good one, in whichever order: %s', (_, bad) => {
    const alone = told([light()]);
    expect(told([bad, light()])).toEqual(alone);
    expect(told([light(), bad])).toEqual(alone);
    expect(asks([bad, light()])).not.toContain('gap-read-twice');
  });

  test('and so where lash may be in the good one: on a lifter that sinks there is none, and that is no merit', () => {
    const solid = { ...BUILD, engine: CHANGE.engine };
    const good = light(0.112);
    expect(told([sunk, good], solid)).toEqual(told([good], solid));
    expect(told([good, sunk], solid)).toEqual(told([good], solid));
  });

  test('of two that were read alike the lesser one stands', () => {
    expect(told([light(0.096), gap('again', 0.098)])).toEqual(told([light(0.096)]));
    expect(told([light(0.098), gap('again', 0.096)])[0]?.[1]).toContain('again');
  });

  test('a larger one that can’t be the same gap takes nothing from it, and is asked about', () => {
    const small = running({ reading: { value: 0.09 * 0.0254 } });
    expect(told([small, light(0.12)])).toEqual(told([small]));
    expect(asks([small, light(0.12)])).toContain('gap-read-twice');
    const onSinking = gap('sunk', 0.085, { lifter: 'hydraulic' });
    expect(asks([onSinking, light(0.12)])).toContain('gap-read-twice');
  });
});

test('a guess under the limit bars nothing once a tool has told the gap', () => {
  const guess = gap('guess', 0.07, { tool: 'guess' });
  const barred = (sheet: readonly SheetEvidence[]) =>
    heard({ ...BUILD, sheet }).all.notToRun.filter(({ sentence }) => sentence.includes('guessed'));
  expect(barred([guess])).toHaveLength(1);
  expect(barred([guess, light(0.12)])).toHaveLength(0);
});

describe('scans of one valve', () => {
  const at = [-5, 0, 5, 10, 15, 20];
  const gaps = [0.165, 0.14, 0.12, 0.112, 0.118, 0.14];
  const scan = (id: string, less: number, more = {}, count = 6) =>
    scanEvidence(
      pointsOf(at.slice(0, count).map((angle, index) => [angle, (gaps[index] ?? 0) - less] as const)),
      { id, arms: 'before', line: id.length, ...more },
    );
  const toldOf = (...scans: ReturnType<typeof scanEvidence>[]) =>
    ofGap([], { ...BUILD, scans }).map(({ word, restsOn, lacks }) => [word ?? 'none', restsOn, lacks]);

  test('one on the running spring and a lifter that sinks, one that ended at its least: told by the whole one', () => {
    const good = toldOf(scan('good', 0.004));
    expect(good.flat(2)).toContain('good');
    expect(toldOf(scan('bad', 0, { lifter: 'hydraulic', spring: 'running' }), scan('good', 0.004))).toEqual(
      good,
    );
    expect(toldOf(scan('cut', 0, {}, 4), scan('good', 0.004))).toEqual(good);
    expect(
      toldOf(scan('lash', 0, { lash: 'set', lashSetting: 0.016 * 0.0254 }), scan('good', 0.004)),
    ).toEqual(good);
  });

  test('read otherwise and too far apart they are asked about', () => {
    const both = { ...BUILD, scans: [scan('small', 0.03, { spring: 'running' }), scan('large', -0.04)] };
    expect(heard(both).asks).toContain('scans-apart');
  });
});
