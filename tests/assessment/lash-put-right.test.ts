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

const ROW: Parameters<typeof toLashLines>[1][number] = {
  shop_id: 'shop',
  reading_id: 'a',
  build_id: 'build',
  engine: 'hot',
  moment: 'found',
  nut: 'held',
  read_on: null,
  done_by: '',
  shim_value: null,
  shim_unit: null,
  shim_typed: null,
  shim_read_as: null,
};

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

/* A log says the day of the shop; clocks on earth differ by up to twelve hours behind universal time. */
test.each([
  // Eight in the evening of the 13th, eight hours behind.
  ['2026-03-13', '2026-03-14T04:00:00Z', false],
  ['2026-03-13', '2026-03-14T11:59:00Z', false],
  ['2026-03-13', '2026-03-14T12:00:00Z', true],
  ['2026-03-12', '2026-03-14T04:00:00Z', true],
  // Seven in the morning of the 14th, nine hours ahead.
  ['2026-03-14', '2026-03-13T22:00:00Z', false],
] as const)('a line of %s that was entered at %s was told later: %s', (day, at, later) => {
  if (stored === undefined) throw new Error('no line');
  const reading = { ...stored.reading, id: 'a', seq: 1, at: new Date(at) };
  const [line] = toLashLines([reading], [{ ...ROW, read_on: day }]);
  expect(line).toMatchObject({ on: day, toldLater: later });
});
