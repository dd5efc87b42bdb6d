import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/adjuster.ts';
import { readAdjusterThread } from '../../server/mechanics/threads/adjuster-thread.ts';

/* Pitches of ISO 261 and of ASME B1.1; what a turn does is its pitch, and half a turn half of it. */
const of = (thread: string) =>
  computation.input.safeParse({
    thread,
    ratio: 1.5,
    mount: 'valve-end-screw',
    lifter: 'solid',
    lashFound: '0.25 mm',
    lashWanted: '0.15 mm',
  });

describe('the thread of an adjuster', () => {
  test.each([
    ['M6x0.75', 0.75],
    ['M8x0.75', 0.75],
    ['m7 x 0,75', 0.75],
    ['M5×0.5', 0.5],
    ['M9x1', 1],
    ['0.75 mm', 0.75],
    ['10-32', 25.4 / 32],
    ['#10-32 UNF', 25.4 / 32],
    ['32 tpi', 25.4 / 32],
    ['7/16-20', 25.4 / 20],
  ])('%s', (text, millimetres) => {
    const read = readAdjusterThread(text);
    expect(read.ok && read.thread.pitch * 1000).toBeCloseTo(millimetres, 9);
  });

  test('.10 mm by a screw at the valve of .75 mm pitch is .133 turn, 48 degrees', () => {
    const given = of('M6x0.75').data;
    if (given === undefined) throw new Error('refused');
    const { turns, degrees } = computation.compute(given);
    expect(turns).toBeCloseTo(0.1333, 4);
    expect((degrees * 180) / Math.PI).toBeCloseTo(48, 6);
  });

  test.each(['M8x3', '10-99', '9 mm', 'M6', '7/16-24'])('%s is refused, with the way round', (text) => {
    const read = readAdjusterThread(text);
    expect(read.ok ? '' : read.detail).toMatch(/or the pitch alone, such as 0\.75 mm or 32 tpi$/);
  });
});
