import { describe, expect, test } from 'vitest';
import { textOf as read } from '../../tools/page-text.ts';
import { inField } from '../measured-pages.ts';
import { BUILD, settingCall } from './setting-call.ts';

const { freshCall, html, keep, newest, send } = settingCall();

describe('a pushrod from a checker', () => {
  const checker = { checkerAtZero: '7.8', perTurn: '.050', turns: '1', convention: '', stock: '' };

  test('its form has ratio and lash of the build; the lash at the valve comes off by the ratio', async () => {
    await freshCall();
    const page = await html('steps/geometry?of=pushrod-length');
    expect(['lash', 'ratio', 'perTurn'].map((name) => inField(page, name))).toEqual([
      '.018 in',
      '1.6',
      '.050 in',
    ]);
    expect(page).not.toContain('name="add"');
    // 7.800 and one turn of .050 is 7.850 (a cam maker's answers); .018 at the valve is .01125 at 1.6, by hand.
    const kept = await keep('geometry', 'pushrod-length', {
      ...checker,
      lash: '.018',
      ratio: '1.6',
      stock: '7.8, 7.85',
    });
    expect(kept.statusCode).toBe(303);
    const text = read(await html('steps/geometry?of=pushrod-length'));
    expect(text).toContain('7.8387 in');
    expect(text).toContain('without an adjuster no gap is left');
    expect(inField(await html('steps/geometry?of=pushrod-length'), 'checkerAtZero')).toBe('7.8 in');
  });

  test('a hydraulic lifter has its preload added, and no ratio goes along without a lash', async () => {
    await freshCall({ ...BUILD, engine: { lifter: 'hydraulic-roller' } });
    const page = await html('steps/geometry?of=pushrod-length');
    expect(page).toContain('name="add"');
    expect(page).not.toContain('name="lash"');
    await keep('geometry', 'pushrod-length', { ...checker, perTurn: '1/4-20', add: '.030' });
    expect(await newest('pushrod-length')).toMatch(/"length":\{[^}]*"value":7\.88\d*/);
  });

  test('told by a gauge it is .017 less, and a thread that is none is named at its field', async () => {
    // Lifters that nobody said: nothing says that a lash had to come off.
    await freshCall({ ...BUILD, engine: { cylinders: 8 } });
    await keep('geometry', 'pushrod-length', { ...checker, convention: 'effective' });
    expect(read(await html('steps/geometry?of=pushrod-length'))).toContain('7.833 in');
    const bad = await keep('geometry', 'pushrod-length', { ...checker, perTurn: '1/4-21' });
    expect([bad.statusCode, bad.body.includes('href="#working-f-perTurn"')]).toEqual([422, true]);
    expect(inField(bad.body, 'checkerAtZero')).toBe('7.8');
  });
});

describe('the height of a stand', () => {
  test('two heights, the arm and lift of the build, and the nearest shim', async () => {
    await freshCall({ ...BUILD, engine: { rockerMounting: 'shaft', lifter: 'solid-flat' } });
    const page = await html('steps/geometry?of=stand-height');
    // .375 × 1.6 less .018, by hand.
    expect([inField(page, 'netLift'), inField(page, 'pivotToTip')]).toEqual(['.582 in', '1.6 in']);
    // Now: 2.000 + .300 − 1.950 = .350 below; wanted .582/2 = .291; raise .059.
    await keep('geometry', 'stand-height', {
      pivotHeight: '1.95',
      tipHeight: '2.0',
      rollerRadius: '.3',
      pivotToTip: '1.6',
      netLift: '.582',
      shims: '.030, .060',
    });
    const text = read(await html('steps/geometry?of=stand-height'));
    expect(text).toContain('.059 in');
    expect(text).toContain('raise the stand .059 in');
  });

  test('what was read of the part fills the arm and half of the roller', async () => {
    await freshCall({ engine: { rockerMounting: 'shaft' } });
    for (const [kind, typed] of [
      ['pivot-to-tip', '1.48 in'],
      ['roller-diameter', '.596 in'],
    ])
      await send('/identification/readings', {
        kind,
        size: typed,
      });
    const page = await html('steps/geometry?of=stand-height');
    expect([inField(page, 'pivotToTip'), inField(page, 'rollerRadius')]).toEqual(['1.48 in', '.298 in']);
  });
});
