import { describe, expect, test } from 'vitest';
import { textOf as read } from '../../tools/page-text.ts';
import { inField } from '../measured-pages.ts';
import { BUILD, settingCall } from './setting-call.ts';

const { freshCall, html, keep, newest, send } = settingCall();

describe('preload', () => {
  const half = {
    turns: '.5',
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: '1.6',
    band: 'usual',
    liftersTravel: '',
  };

  test('turns past zero, against the band of its kind; the thread is there the next time', async () => {
    await freshCall({ ...BUILD, engine: { rockerMounting: 'stud', lifter: 'hydraulic-roller' } });
    await keep('adjuster', 'lifter-preload', half);
    // .5 × .050 × (1 + 1/1.6) = .040625, by hand.
    const kept = await html('steps/adjuster?of=lifter-preload');
    expect(read(kept)).toContain('.0406 in');
    expect(read(kept)).toContain('within');
    expect(read(kept)).toContain('Pump-up');
    expect(inField(kept, 'thread')).toBe('7/16-20');
    expect(inField(await html('steps/adjuster'), 'thread')).toBe('7/16-20');
    await keep('adjuster', 'lifter-preload', { ...half, band: 'short-travel' });
    expect(await newest('lifter-preload')).toMatch(/"plunger":"short-travel"[\s\S]*"inBand":"over"/);
  });

  test('“the maker’s own” without a band is asked for it', async () => {
    await freshCall();
    const bad = await keep('adjuster', 'lifter-preload', { ...half, band: 'maker' });
    expect([bad.statusCode, read(bad.body).includes('Least preload is missing: the maker’s band')]).toEqual([
      422,
      true,
    ]);
    const kept = await keep('adjuster', 'lifter-preload', {
      ...half,
      band: 'usual',
      'wanted.from': '.03',
      'wanted.to': '.05',
    });
    expect(kept.statusCode).toBe(303);
  });
});

describe('lash by shim', () => {
  test('the lash found last and the card’s of its valve stand in the form', async () => {
    await freshCall({ ...BUILD, cam: { intake: { lash: '.20 mm' }, exhaust: { lash: '.30 mm' } } });
    await send('/lash', {
      cylinder: 2,
      valve: 'exhaust',
      lash: '.40 mm',
      moment: 'found',
      engine: 'cold',
    });
    const page = await html('steps/adjuster?of=lash-shim');
    expect(inField(page, 'lashWanted')).toBe('.3 mm');
    expect(read(page)).toContain('Newest in the log: 2 exhaust');
    // 2.60 + .40 − .30 = 2.70, by hand.
    await keep('adjuster', 'lash-shim', {
      shimFitted: '2.60 mm',
      lashFound: '.40 mm',
      lashWanted: '.30 mm',
      stock: '2.65 mm, 2.72 mm',
    });
    expect(await newest('lash-shim')).toMatch(/"shim":\{[^}]*"value":0?\.1062992/);
  });
});

describe('hot and cold', () => {
  test('by what the parts are made of, as the engine was described; what was found cold is told hot', async () => {
    await freshCall({
      ...BUILD,
      rockers: { nominalRatio: 1.5 },
      engine: { description: 'small V8, iron block, aluminum heads' },
    });
    const found = { cylinder: 1, valve: 'intake', lash: '.012 in', moment: 'found', engine: 'cold' };
    await send('/lash', found);
    const page = await html('steps/adjuster?of=lash-hot-cold');
    expect(page).toMatch(
      /value="cast-iron" selected[\s\S]*value="aluminium" selected[\s\S]*value="steel" selected/,
    );
    expect([inField(page, 'hotLash'), inField(page, 'coldFound')]).toEqual(['.018 in', '.012 in']);
    expect(read(page)).not.toMatch(/expansion/i);
    const kept = await keep('adjuster', 'lash-hot-cold', {
      hotLash: '.018',
      coldFound: '.012',
      temperatureRise: '70 degC',
      ratio: '1.5',
      'materials.block': 'cast-iron',
      'materials.head': 'aluminium',
      'materials.pushrod': 'steel',
      'materials.valve': 'steel',
    });
    expect(kept.statusCode).toBe(303);
    // 70 K × [1.5·11.4·4.5 + 21.5·(2.5·5.2 − .4) − 1.5·12.3·9.7 − 12.3·5.0] millionths = .0075 by hand.
    const text = read(await html('steps/adjuster?of=lash-hot-cold'));
    expect(text).toMatch(/Cold lash [^.]*\.0105 in/);
    expect(text).toContain('.0195 in');
    expect(text).toContain('a guess for this one');
    expect(text).toContain('Printed for an iron block and an aluminium head');
  });
});
