import { expect, test } from 'vitest';
import { toLashLines } from '../../server/records/lash-log/lash-log.ts';
import { PLAIN } from '../mechanics/assessment/plain-build.ts';
import { lashLines } from '../tools/record/valves.ts';

const [stored] = lashLines({
  ...PLAIN,
  lash: [
    {
      id: 'a',
      line: 1,
      standing: true,
      cylinder: 5,
      valve: 'intake',
      gap: { value: 0.0006 },
      readAs: '.024 in',
      moment: 'found',
      engine: 'hot',
      nut: 'held',
      day: '2026-03-02',
    },
  ],
});

/* What a log is ordered by goes with the first entry: putting a figure right is no later look at the gap. */
test('a line that was put right stands where it was entered, of two of one day', () => {
  if (stored === undefined) throw new Error('no line');
  const at = new Date('2026-03-02T10:00:00Z');
  const { reading: own } = stored;
  const reading = (id: string, seq: number, more: object = {}) => ({ ...own, id, seq, at, ...more });
  const lines = toLashLines(
    [reading('a', 1, { replacedBy: 'c' }), reading('b', 2), reading('c', 3, { replaces: 'a' })],
    [],
  );
  expect(lines.map(({ reading: { id }, entered }) => [id, entered])).toEqual([
    ['a', 1],
    ['c', 1],
    ['b', 2],
  ]);
  expect(lines.every(({ toldLater }) => !toldLater)).toBe(true);
});
