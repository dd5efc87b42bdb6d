import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-nest.ts';
import { firstSolid } from '../../server/mechanics/springs/nest.ts';
import { inches, lbfPerInch } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { refused, number, run } = runner(computation);

const spring = (free: number, solid: number, installed?: number) => ({
  rate: lbfPerInch(300),
  freeLength: inches(free),
  solidHeight: inches(solid),
  ...(installed === undefined ? {} : { installedHeight: inches(installed) }),
});
const nest = (springs: readonly unknown[], more: object = {}) => ({ springs, netLift: inches(0.5), ...more });
const at = { installedHeight: inches(1.8) };

describe('heights at, just below and just above each other (by the definition of each height)', () => {
  test.each([
    ['solid at the free length', spring(1.2, 1.2), []],
    ['solid above it', spring(1.2, 1.201), ['/springs/0/solidHeight', '/springs/0/freeLength']],
    ['solid at the installed height', spring(2, 1.8), []],
    ['solid above that', spring(2, 1.801), ['/springs/0/solidHeight', '/installedHeight']],
    ['above one of its own', spring(2, 1.7, 1.69), ['/springs/0/solidHeight', '/springs/0/installedHeight']],
    ['at one of its own', spring(2, 1.7, 1.7), []],
  ])('%s', (_what, one, wanted) => {
    expect(refused(nest([one], at))).toEqual(wanted.map((pointer) => `${pointer} impossible-input`));
  });

  test('the lift up to the height leaves room for nothing', () => {
    expect(refused(nest([spring(2, 1)], { ...at, netLift: inches(1.799) }))).toEqual([]);
    expect(refused(nest([spring(2, 1)], { ...at, netLift: inches(1.8) }))).toEqual([
      '/installedHeight impossible-input',
      '/netLift impossible-input',
    ]);
  });

  test('the height of the nest is blamed once, and each spring by itself', () => {
    expect(refused(nest([spring(2, 1.9), spring(2, 1.9)], at))).toEqual([
      '/springs/0/solidHeight impossible-input',
      '/installedHeight impossible-input',
      '/springs/1/solidHeight impossible-input',
    ]);
  });

  test('two thousand faulty springs are not told one by one: a hundred faults at most', () => {
    const many = Array.from({ length: 2000 }, () => spring(2, 1.9, 1.8));
    expect(refused(nest(many))).toHaveLength(100);
    const lifted = Array.from({ length: 2000 }, () => spring(2, 1, 1.4));
    expect(refused(nest(lifted, { netLift: inches(1.5) }))).toHaveLength(100);
  });
});

describe('the height of the nest is asked for unless every spring has one', () => {
  const asked = '/installedHeight required';
  test.each([
    ['none has one', nest([spring(2, 1), spring(2, 1)]), [asked]],
    ['the first alone has one', nest([spring(2, 1, 1.8), spring(2, 1)]), [asked]],
    ['the last alone has one', nest([spring(2, 1), spring(2, 1, 1.8)]), [asked]],
    ['each has one', nest([spring(2, 1, 1.8), spring(2, 1, 1.8)]), []],
    ['it came', nest([spring(2, 1)], at), []],
    [
      'it came, faulty',
      nest([spring(2, 1)], { installedHeight: inches(-1) }),
      ['/installedHeight out-of-range'],
    ],
    [
      'a spring’s own is faulty',
      nest([{ ...spring(2, 1), installedHeight: inches(-1) }]),
      ['/springs/0/installedHeight out-of-range'],
    ],
    [
      'another field of a spring is faulty, and it has none',
      nest([{ ...spring(2, 1), rate: inches(1) }]),
      ['/springs/0/rate wrong-dimension', asked],
    ],
    [
      'a spring is nothing',
      nest([null, spring(2, 1, 1.8)]),
      [expect.stringMatching(/^\/springs\/0 /), asked],
    ],
    ['a spring is a number', nest([7]), [expect.stringMatching(/^\/springs\/0 /), asked]],
    ['no spring is there', nest([]), ['/springs required', asked]],
    ['springs are left out', { netLift: inches(0.5) }, ['/springs required', asked]],
  ])('%s', (_what, body, wanted) => {
    expect(refused(body)).toEqual(wanted);
  });
});

describe('which goes solid first', () => {
  test.each([
    ['the one with less room', [spring(2, 1.1), spring(2, 1.2)], 1],
    ['the same room, the first', [spring(2, 1.2), spring(2, 1.2)], 0],
    ['one step lower, with less room', [spring(2, 1.2), spring(2, 1.1, 1.65)], 1],
    ['one step lower, with more room', [spring(2, 1.2), spring(2, 1.0, 1.65)], 0],
  ])('%s', (_what, springs, wanted) => {
    expect(number(nest(springs, at), 'limiting')).toBe(wanted);
  });

  test('of the same room the taller one, wherever it stands in the list', () => {
    // .750 − .500 and .500 − .250: both .250 to the last figure.
    const [tall, low] = [
      { rate: 1, freeLength: 1, solidHeight: 0.5, installedHeight: 0.75 },
      { rate: 1, freeLength: 1, solidHeight: 0.25, installedHeight: 0.5 },
    ];
    const open = (each: { readonly installedHeight?: number | undefined }) => each.installedHeight ?? 0;
    expect(firstSolid([tall, low], open)).toMatchObject({ index: 0, margin: 0.25 });
    expect(firstSolid([low, tall], open)).toMatchObject({ index: 1, margin: 0.25 });
  });

  test('the interval comes with a tolerance alone', () => {
    expect(partOf(run(nest([spring(2, 1)], at)).result, 'interval95')).toBeUndefined();
    expect(
      partOf(run(nest([spring(2, 1)], { ...at, loadTolerance: 0.05 })).result, 'interval95'),
    ).toBeDefined();
  });
});

describeSaid(computation, {
  warns: [
    ['nothing is loose', nest([spring(2, 1)], at), ['pring', 'maker']],
    ['each is pressed', nest([spring(2, 1), spring(1.801, 1)], at), ['pring', 'maker']],
    ['one only just reaches', nest([spring(2, 1), spring(1.8, 1)], at), ['Spring 2', 'pring', 'maker']],
    ['coils touch', nest([spring(2, 1.4)], at), ['coils touch', 'pring', 'maker']],
    ['coils just meet', nest([spring(2, 1.3)], at), ['coils touch', 'pring', 'maker']],
    ['coils nearly meet', nest([spring(2, 1.2999)], at), ['pring', 'maker']],
  ],
});
