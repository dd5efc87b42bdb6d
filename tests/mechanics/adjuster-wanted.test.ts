import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/adjuster.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

/** The turns that a wanted lash or preload needs, in turns, degrees and flats. */
const { run, number, faults } = runner(computation);
const stud = { thread: '3/8-24', ratio: 1.5, mount: 'stud-nut' };
const solid = { ...stud, lifter: 'solid' };
const hydraulic = { ...stud, lifter: 'hydraulic' };
const lash = (found: number, wanted: number) => ({ lashFound: inches(found), lashWanted: inches(wanted) });
const direction = (body: object) => partOf(run(body).result, 'direction');

describe('from a lash found to the one wanted', () => {
  test.each([
    // Gap closed by one turn, (1 + ratio) × pitch on a stud, ratio × pitch at the cup, pitch at the valve: the list of
    // check values, section 8. A change of one such gap is one turn.
    ['7/16-20', 'stud-nut', 1.6, 0.13],
    ['3/8-24', 'stud-nut', 1.7, 0.1125],
    ['3/8-24', 'cup-screw', 1.5, 0.0625],
    ['7/16-20', 'valve-end-screw', 1.5, 0.05],
  ])('%s, %s at %d: a change of %d in is a turn', (thread, mount, ratio, closes) => {
    const at = { thread, mount, ratio, lifter: 'solid' };
    const tighter = { ...at, ...lash(closes + 0.01, 0.01) };
    expect(number(tighter, 'turns')).toBeCloseTo(1, 9);
    expect(number(tighter, 'lashChange')).toBeCloseTo(-closes, 12);
    expect(direction(tighter)).toBe('tighten');
    const looser = { ...at, ...lash(0.01, closes + 0.01) };
    expect(number(looser, 'turns')).toBeCloseTo(-1, 9);
    expect(number(looser, 'degrees')).toBeCloseTo(-360, 6);
    expect(number(looser, 'flats')).toBeCloseTo(-6, 9);
    expect(direction(looser)).toBe('loosen');
  });

  test('.022 found, .0116 wanted, 7/16-20 stud at 1.6: a twelfth and a bit, 28.8°, .48 flats', () => {
    // .0104 ÷ .13 = .08 turn, worked out by hand.
    const body = { ...solid, thread: '7/16-20', ratio: 1.6, ...lash(0.022, 0.0116) };
    expectNear(number(body, 'turns'), 0.08);
    expectNear(number(body, 'degrees'), 28.8);
    expectNear(number(body, 'flats'), 0.48);
  });

  test('the gap that is wanted already: no turn, and no way to turn', () => {
    const same = run({ ...solid, ...lash(0.018, 0.018) }).result;
    expect(same).toEqual({
      lashChange: { value: 0, unit: 'in' },
      turns: 0,
      degrees: { value: 0, unit: 'deg' },
      flats: 0,
    });
    // Told in inches and in millimetres one gap differs by the last bit of a double.
    expect(direction({ ...solid, lashFound: inches(0.018), lashWanted: mm(0.4572) })).toBeUndefined();
  });

  test('a gap found at zero is cautioned: it may be less than none', () => {
    expect(run({ ...solid, ...lash(0, 0.018) }).cautions.join()).toContain('held off its seat');
    expect(run({ ...solid, ...lash(0.002, 0.018) }).cautions.join()).not.toContain('held off its seat');
    expect(direction({ ...solid, ...lash(0, 0.018) })).toBe('loosen');
    expect(direction({ ...solid, ...lash(0.018, 0) })).toBe('tighten');
  });

  const numbers = {
    found: fc.double({ min: 0, max: 0.2, noNaN: true }),
    wanted: fc.double({ min: 0, max: 0.2, noNaN: true }),
    ratio: fc.double({ min: 1, max: 2.2, noNaN: true }),
    thread: fc.constantFrom('3/8-24', '7/16-20', '5/16-18', 'M8×1.25', 'M10×1.5'),
    mount: fc.constantFrom('stud-nut', 'cup-screw', 'valve-end-screw'),
  };

  test('those turns, given back, change the lash by what was wanted', () => {
    fc.assert(
      fc.property(fc.record(numbers), ({ found, wanted, ...at }) => {
        const body = { ...at, lifter: 'solid' };
        const there = { ...body, ...lash(found, wanted) };
        const turns = number(there, 'turns');
        expect(number({ ...body, turns }, 'lashChange')).toBeCloseTo(wanted - found, 12);
        expect(run({ ...body, turns }).result).toEqual(run(there).result);
        expect(number(there, 'degrees')).toBeCloseTo(360 * turns, 9);
        expect(number(there, 'flats')).toBeCloseTo(number(there, 'degrees') / 60, 9);
        // The way back is as far the other way.
        expect(number({ ...body, ...lash(wanted, found) }, 'turns')).toBeCloseTo(-turns, 12);
      }),
    );
  });
});

describe('a preload that is wanted', () => {
  test('is the same as preload: .030 in is .432 turn of 3/8-24 at 1.5 (check values, section 8)', () => {
    const body = { ...hydraulic, preloadWanted: inches(0.03) };
    expectNear(number(body, 'turns'), 0.432);
    expectNear(number(body, 'degrees'), 155.52);
    expectNear(number(body, 'flats'), 2.592);
    expect(direction(body)).toBe('tighten');
    expect(run(body).result).toEqual(run({ ...hydraulic, preload: inches(0.03) }).result);
    expect(direction({ ...hydraulic, preloadWanted: inches(0) })).toBeUndefined();
  });

  test('turns have degrees, flats and a direction as well', () => {
    expect(run({ ...hydraulic, turns: -0.25 }).result).toMatchObject({ flats: -1.5, direction: 'loosen' });
    expectNear(number({ ...hydraulic, turns: -0.25 }, 'degrees'), -90);
    expect(direction({ ...hydraulic, turns: 0 })).toBeUndefined();
  });
});

describe('one form, and the one that goes with the lifter', () => {
  test.each([
    ['none', {}, ['/turns required']],
    ['the found lash alone', { lashFound: inches(0.02) }, ['/lashWanted required']],
    ['the wanted lash alone', { lashWanted: inches(0.02) }, ['/lashFound required']],
    [
      'turns and a lash',
      { turns: 1, ...lash(0.02, 0.01) },
      ['/lashFound not-allowed', '/lashWanted not-allowed'],
    ],
    ['turns and half a lash', { turns: 1, lashFound: inches(0.02) }, ['/lashFound not-allowed']],
    ['both preloads', { preload: inches(0.03), preloadWanted: inches(0.03) }, ['/preloadWanted not-allowed']],
    [
      'half a lash and a preload',
      { lashFound: inches(0.02), preloadWanted: inches(0.03) },
      ['/lashWanted required', '/preloadWanted not-allowed'],
    ],
    [
      'all of them',
      { turns: 1, preload: inches(0.03), preloadWanted: inches(0.03), ...lash(0.02, 0.01) },
      [
        '/lashFound not-allowed',
        '/lashWanted not-allowed',
        '/preload not-allowed',
        '/preloadWanted not-allowed',
      ],
    ],
    [
      'a faulty lash',
      { lashFound: 0.02, lashWanted: inches(-0.01) },
      ['/lashFound wrong-dimension', '/lashWanted out-of-range'],
    ],
    ['one lash faulty', { lashFound: null, lashWanted: inches(0.01) }, ['/lashFound not-a-number']],
  ])('%s', (_, form, told) => {
    expect(faults({ ...solid, ...form })).toEqual(told);
  });

  test('a lash of a hydraulic lifter, a preload of a solid one', () => {
    expect(faults({ ...hydraulic, ...lash(0.02, 0.01) })).toEqual([
      '/lashFound impossible-input',
      '/lashWanted impossible-input',
      '/lifter impossible-input',
    ]);
    expect(faults({ ...solid, preloadWanted: inches(0.03) })).toEqual([
      '/lifter impossible-input',
      '/preloadWanted impossible-input',
    ]);
  });

  test('more turns than any stud has', () => {
    const far = { ...solid, mount: 'valve-end-screw' };
    const both = ['/lashFound impossible-input', '/lashWanted impossible-input'];
    expect(faults({ ...far, ...lash(0, 99) })).toEqual(both);
    expect(faults({ ...far, ...lash(99, 0) })).toEqual(both);
    expect(faults({ ...hydraulic, mount: 'valve-end-screw', preloadWanted: inches(99) })).toEqual([
      '/preloadWanted impossible-input',
    ]);
  });
});

test('under fire', () => {
  expectSoundUnderFire(computation, { ...solid, ...lash(0.02, 0.01) });
  expectSoundUnderFire(computation, { ...hydraulic, preloadWanted: inches(0.03) });
}, 30_000);
