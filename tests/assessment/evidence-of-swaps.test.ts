import { describe, expect, test } from 'vitest';
import { evidenceOf } from '../../server/assessment/evidence.ts';
import { armThen, movesOf, type Placement } from '../../server/records/arms/placements.ts';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { IN, PLAIN_LASH, sheetEntry } from '../tools/evidence-of-swaps.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';

const AT = new Date('2026-03-01T09:00:00Z');
/** `A 5 at 3`: arm A on 5 intake, on line 3. */
function placed(text: string): Placement {
  const [armId = '', cylinder = '', , seq = ''] = text.split(' ');
  return {
    id: text,
    armId,
    cylinder: Number(cylinder),
    valve: 'intake',
    reason: '',
    seq: Number(seq),
    by: 'Robin',
    at: AT,
  };
}
const FIVE = { cylinder: 5, valve: 'intake' };

describe('which arm sat where', () => {
  const swapped = ['A 5 at 3', 'B 7 at 4', 'A 7 at 10', 'B 5 at 11'].map(placed);

  test('the one of then; before any was placed there the first, if it had been nowhere else', () => {
    expect([1, 5, 12].map((line) => armThen(swapped, FIVE, line))).toEqual(['A', 'A', 'B']);
    // Between the two entries of a swap the valve is empty.
    expect(armThen(swapped, FIVE, 11)).toBeUndefined();
    // C came to 5 from 1: what was read on 5 before was read with another, which nobody named.
    expect(armThen(['C 1 at 3', 'C 5 at 9'].map(placed), FIVE, 5)).toBeUndefined();
    expect(armThen([], FIVE, 5)).toBeUndefined();
  });

  test('where an arm sits at first is no swap, nor the same said again; a new arm in its place is', () => {
    expect(movesOf(['A 5 at 3', 'B 7 at 4', 'A 5 at 5'].map(placed))).toEqual([]);
    expect(
      movesOf(swapped).map(({ placement, from, inPlaceOf }) => [
        placement.armId,
        from?.cylinder,
        placement.cylinder,
        inPlaceOf,
      ]),
    ).toEqual([
      ['A', 5, 7, 'B'],
      ['B', 7, 5, undefined],
    ]);
    expect(movesOf(['A 5 at 3', 'C 5 at 9'].map(placed)).map(({ inPlaceOf }) => inPlaceOf)).toEqual(['A']);
  });
});

describe('evidence of a record with swaps', () => {
  const record = recordOf(PLAIN_LASH);
  const evidence = (more: Partial<BuildRecord>) => evidenceOf({ ...record, ...more }, callOf(PLAIN_LASH));

  test('a lash that was read with the arms before is left out', () => {
    const [line] = record.lashLines;
    if (line === undefined) throw new Error('the record has no lash');
    expect(evidence({}).lash.map(({ id }) => id)).toEqual([line.reading.id]);
    const before = { ...line, reading: { ...line.reading, id: 'before', arms: 'before' as const } };
    expect(evidence({ lashLines: [before, line] }).lash.map(({ id }) => id)).toEqual([line.reading.id]);
    expect(evidence({ lashLines: [before] }).lash).toEqual([]);
  });

  test('a lift that was read before its arm was named has it; one put right since has the arm of then', () => {
    const placements = ['A 5 at 3', 'B 7 at 4', 'A 7 at 10', 'B 5 at 11'].map(placed);
    const early = sheetEntry('early', 1, 0.547 * IN);
    const right = { ...sheetEntry('right', 20, 0.548 * IN), replaces: 'early' };
    const { sheet } = evidence({
      placements,
      sheetReadings: [{ ...early, replacedBy: 'right' }, right],
    });
    expect(sheet.map(({ armId, standing }) => [armId, standing])).toEqual([
      ['A', false],
      ['A', true],
    ]);
  });

  test('with the arms before nobody says which it was', () => {
    const placements = ['A 5 at 3'].map(placed);
    const before = { ...sheetEntry('early', 1, 0.547 * IN), arms: 'before' as const };
    expect(evidence({ placements, sheetReadings: [before] }).sheet[0]?.armId).toBeUndefined();
  });
});
