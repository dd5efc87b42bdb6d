import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-nest.ts';
import { expectNear } from './helpers/near.ts';
import { mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { bhandari } from './helpers/textbook-nest.ts';

const { run, number, faults } = runner(computation);

describe('springs at heights of their own', () => {
  const [outer, inner] = bhandari.springs;
  const stepped = (own: number) => ({
    ...bhandari,
    springs: [outer, { ...inner, installedHeight: mm(own) }],
  });

  test('its own height written as the nest’s changes nothing', () => {
    const same = { ...inner, installedHeight: bhandari.installedHeight };
    expect(run({ ...bhandari, springs: [outer, same] }).result).toEqual(run(bhandari).result);
  });

  test('a step of 3 mm is a spring 3 mm longer and stiffer by nothing: Bhandari’s inner one from 88 mm', () => {
    const own = 100 - 24.988839 - 3;
    const longer = {
      ...bhandari,
      springs: [outer, { ...inner, freeLength: mm(88), solidHeight: mm(43) }],
    };
    for (const path of ['seatLoad', 'openLoad', 'loads.1.seatLoad', 'margin', 'limiting']) {
      expectNear(number(stepped(own), path, 'metric'), number(longer, path, 'metric'));
    }
  });

  test('the first to go solid is the one with the least room, and it may be the lower one', () => {
    // 75.011 − 5 − 60 = 10.011 left in the outer one; 48 − 5 − 40 = 3 in the inner one.
    expectNear(number(stepped(48), 'margin', 'metric'), 3);
    expect(number(stepped(48), 'limiting')).toBe(1);
    expect(run(stepped(48)).assumptions.join()).toContain('its own installed height');
  });

  test('the nest’s height may be left out where each has its own, and is asked for where one has none', () => {
    const { installedHeight, ...rest } = bhandari;
    const both = bhandari.springs.map((spring) => ({ ...spring, installedHeight }));
    expect(run({ ...rest, springs: both }).result).toEqual(run(bhandari).result);
    expect(faults({ ...rest, springs: [both[0], inner] })).toEqual(['/installedHeight required']);
    expect(faults({ ...rest, springs: [both[0], { ...both[1], installedHeight: 3 }] })).toEqual([
      '/springs/1/installedHeight wrong-dimension',
    ]);
    expect(faults({ ...rest, springs: [] })).toEqual(['/installedHeight required', '/springs required']);
  });

  test('what can’t be is told at the height that it was said with', () => {
    expect(faults(stepped(39))).toEqual([
      '/springs/1/installedHeight impossible-input',
      '/springs/1/solidHeight impossible-input',
    ]);
    expect(faults({ ...stepped(45), netLift: mm(45) })).toEqual([
      '/netLift impossible-input',
      '/springs/1/installedHeight impossible-input',
    ]);
    expect(faults({ ...stepped(45), netLift: mm(80) })).toEqual([
      '/installedHeight impossible-input',
      '/netLift impossible-input',
      '/springs/1/installedHeight impossible-input',
    ]);
  });
});
