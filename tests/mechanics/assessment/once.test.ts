import { expect, test } from 'vitest';
import { asItIs, makingOnce, once, onceEach } from '../../../server/mechanics/assessment/common/once.ts';

const build = { lash: 0.02 };

test('while an assessment is made it is worked out once for each build', () => {
  const worked: number[] = [];
  const twice = once(({ lash }: typeof build) => {
    worked.push(lash);
    return { lash: 2 * lash };
  });
  makingOnce(() => {
    expect(twice(build)).toBe(twice(build));
    expect(twice({ lash: 0.03 })).toEqual({ lash: 0.06 });
  });
  expect(worked).toEqual([0.02, 0.03]);
});

test('that there is nothing is known as well', () => {
  let asked = 0;
  const nothing = onceEach(asItIs, (_: typeof build, side: string): undefined => {
    asked += side.length;
  });
  makingOnce(() => [nothing(build, 'a'), nothing(build, 'a'), nothing(build, 'ab')]);
  expect(asked).toBe('a'.length + 'ab'.length);
});

test('what is asked of it beside the build is kept apart by its key', () => {
  const at = onceEach(
    ({ cylinder }: { cylinder: number }) => cylinder,
    ({ lash }: typeof build, { cylinder }) => ({ cylinder, lash }),
  );
  makingOnce(() => {
    expect(at(build, { cylinder: 1 })).toBe(at(build, { cylinder: 1 }));
    expect(at(build, { cylinder: 2 })).toEqual({ cylinder: 2, lash: 0.02 });
  });
});

test('the next assessment works it out again, also after one that failed, and so does whoever makes none', () => {
  let times = 0;
  const counted = once((_: typeof build) => {
    times += 1;
    return times;
  });
  expect(makingOnce(() => counted(build))).toBe(1);
  expect(() =>
    makingOnce(() => {
      counted(build);
      throw new Error('no such build');
    }),
  ).toThrow('no such build');
  expect(makingOnce(() => [counted(build), counted(build)])).toEqual([3, 3]);
  expect([counted(build), counted(build)]).toEqual([4, 5]);
});

test('an assessment inside of another knows nothing of it', () => {
  let times = 0;
  const counted = once((_: typeof build) => {
    times += 1;
    return times;
  });
  expect(makingOnce(() => [counted(build), makingOnce(() => counted(build))])).toEqual([1, 2]);
});
