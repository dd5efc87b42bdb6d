import { describe, expect, test } from 'vitest';
import { saidInputs } from '../../../server/compute/said-inputs.ts';
import { computation as adjuster } from '../../../server/mechanics/computations/adjuster.ts';
import { turnsOfParts } from '../../../shared/quantities/part-turns.ts';

/* A turn has 360° and a hexagon six flats; ways of saying are common practice, no source. */
describe('turns of a nut said by its parts', () => {
  test.each([
    ['90 degrees', 0.25],
    ['90°', 0.25],
    ['-45 deg', -0.125],
    ['2 flats', 2 / 6],
    ['two flats', 2 / 6],
    ['1 flat', 1 / 6],
    ['.5 flat', 1 / 12],
  ])('%s', (text, turns) => expect(turnsOfParts(text)).toBeCloseTo(turns, 12));

  test.each(['half a turn', '180', 'degrees', 'a few flats', ''])('%j is none', (text) =>
    expect(turnsOfParts(text)).toBeUndefined(),
  );

  const inputs = (turns: unknown) => saidInputs(adjuster.input, { thread: '7/16-20', turns });
  test('a field of turns takes them, and no more than a thread has', () => {
    expect(inputs('90 degrees').inputs).toMatchObject({ turns: 0.25 });
    expect(inputs('three flats').inputs).toMatchObject({ turns: 0.5 });
    expect(inputs('6000 degrees').faults.map(({ code }) => code)).toEqual(['out-of-range']);
    expect(inputs('half a turn').inputs).toMatchObject({ turns: 0.5 });
  });
});
