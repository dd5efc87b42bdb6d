import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { valueAt } from '../../shared/problems/pointer.ts';
import { problemIn } from '../tools/problem.ts';
import { type TestService, testService } from '../tools/service.ts';
import { SOUND } from './compute/bodies.ts';
import { principalOf } from './compute/caller.ts';
import { deg, inch } from './compute/forms.ts';
import { IMPOSSIBLE } from './compute/impossible.ts';
import { withAt } from './compute/leaves.ts';

/** Lists that are too long or badly made, and what no engine can be. */
let service: TestService;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '10000000' });
});
afterAll(() => service.close());

const { faults, codes } = principalOf(() => service);
const body = (name: string, pointer: string, value: unknown) => withAt(SOUND[name], pointer, value);

describe('lists that are too long', () => {
  /** What the route takes, less what stands around the list. */
  const BODY = 4 * 1024 * 1024 - 16 * 1024;
  /** Each list of the contract with one item of it; a list without a limit of its own takes 2 000. */
  const lists: readonly (readonly [name: string, pointer: string])[] = [
    ['ratio-at-full-lift', '/valveLift/readings'],
    ['ratio-at-full-lift', '/nominals'],
    ['ratio-through-lift', '/pairs'],
    ['spring-nest', '/springs'],
    ['piston-drop', '/crankAngles'],
    ['lobe-profile', '/crankAngles'],
    ['lobe-profile', '/durations'],
    ['piston-to-valve', '/profile/durations'],
    ['gap-scan', '/readings'],
    ['outliers', '/values'],
    ['control-chart', '/subgroups'],
    ['explain-readings', '/readings'],
    ['explain-readings', '/nominals'],
    ['top-dead-centre', '/stopReadings'],
    ['pushrod-length', '/stock'],
    ['stand-height', '/shims'],
    ['lash-shim', '/stock'],
  ];
  test.each(lists)('%s %s', async (name, pointer) => {
    const item = valueAt(SOUND[name], `${pointer}/0`);
    for (const each of [item, 5, null, {}]) {
      // As many as a body may hold, and one more than the list may.
      const most = Math.min(100_000, Math.floor(BODY / (JSON.stringify(each).length + 1)));
      for (const count of [2001, most]) {
        const told = await faults(name, JSON.stringify(body(name, pointer, Array(count).fill(each))));
        expect(told.map((fault) => `${fault.pointer} ${fault.code}`)).toEqual([`${pointer} too-many`]);
        expect(told[0]?.received).toBe(`a list of ${count} items`);
      }
    }
  });

  test('a list with one unit is too long at its field as well', async () => {
    const values = Array(100_000).fill(1);
    expect(await codes('piston-drop', body('piston-drop', '/crankAngles', { values, unit: 'deg' }))).toEqual([
      '/crankAngles too-many',
    ]);
  });

  test.each([
    [{ values: [1, 2] }, ['/unit required']],
    [{ values: [1, 2], unit: 'cubit' }, ['/unit unknown-unit']],
    [{ values: [1, 2], unit: 'in' }, ['/unit wrong-dimension']],
    [{ unit: 'deg' }, ['/values required']],
    [{ values: 'x', unit: 'deg' }, ['/values not-allowed']],
    [
      { values: [1, '2', null, deg(3)], unit: 'deg' },
      ['/values/1 not-a-number', '/values/2 not-a-number', '/values/3 wrong-dimension'],
    ],
    [{ values: [1, 1e308], unit: 'deg' }, ['/values/1 impossible-input']],
    [
      { values: ['x'], unit: 'cubit', a: 1, b: 2 },
      ['/a unknown-field', '/b unknown-field', '/unit unknown-unit', '/values/0 not-a-number'],
    ],
    [
      [deg(1), 5, null],
      ['/1 wrong-dimension', '/2 not-a-number'],
    ],
    [{}, [' not-allowed']],
    ['23 deg', [' not-allowed']],
  ])('a list of angles as %j', async (given, wanted) => {
    const told = await codes('piston-drop', body('piston-drop', '/crankAngles', given));
    expect(told).toEqual(wanted.map((each) => `/crankAngles${each}`));
  });
});

describe('what no engine can be', () => {
  test.each(IMPOSSIBLE)('%s with %j names %j', async (name, change, pointers) => {
    const bad = Object.entries(change).reduce(
      (whole: unknown, [at, part]) => withAt(whole, at, part),
      SOUND[name],
    );
    expect(await codes(name, bad)).toEqual(pointers.map((pointer) => `${pointer} impossible-input`));
  });

  test('an event of the wrong dead centre, and both forms at once', async () => {
    const wrong = withAt(SOUND['cam-timing'], '/intake/opens/side', 'BBDC');
    expect(await codes('cam-timing', wrong)).toEqual(['/intake/opens/side not-allowed']);
    const both = withAt(SOUND['cam-timing'], '/intake/duration', deg(270));
    expect((await codes('cam-timing', both)).every((each) => each.startsWith('/intake/'))).toBe(true);
    expect(await codes('adjuster', body('adjuster', '/preload', inch(0.03)))).toEqual([
      '/preload not-allowed',
    ]);
    expect(await codes('thread', { designation: '7/16' })).toEqual(['/designation not-allowed']);
  });

  test('units that are none are refused in the query', async () => {
    const response = await service.request({
      method: 'POST',
      url: '/api/v1/compute/lift?units=furlong',
      payload: SOUND.lift ?? {},
    });
    expect(problemIn(response, 422, 'invalid-input').errors?.map(({ pointer }) => pointer)).toEqual([
      '/units',
    ]);
  });
});
