import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { answered, heard } from '../whole-sheet.ts';
import { arm, CHANGE, gapOf } from './change-of-arms.ts';

/* A lower ratio is fitted for want of room: 1.7 on, .072 read with it, 1.6 planned and placed since. Figures invented. */
const BUILD: Evidence = {
  ...CHANGE,
  engine: { ...CHANGE.engine, lifter: 'hydraulic-flat' },
  springs: {},
  rockers: { soldAs: 1.7, planned: 1.6 },
  arms: [arm('old', '1.7'), arm('new', '1.6')],
  seats: [{ cylinder: 1, valve: 'intake', armId: 'new' }],
};
const gap = (id: string, inches: number, armId: string) =>
  gapOf(id, 'piston-to-valve', inches, { tool: 'indicator', armId });
const short = { ...BUILD, sheet: [gap('then', 0.072, 'old')] };
const readWithNew = { ...BUILD, sheet: [...short.sheet, gap('now', 0.096, 'new')] };

/** Looked, it is short, and the desk lets it be turned. */
function lifted(evidence: Evidence): Evidence {
  const said = answered(evidence, 'gap-short', 'found', 40);
  const [stop] = heard(said).all.stop;
  if (stop?.entryId === undefined) throw new Error('no stop');
  return { ...said, call: { ...said.call, stopsLifted: [{ stopId: stop.id, entryId: stop.entryId }] } };
}

describe('a gap that was short with arms that are off since', () => {
  test('stops until the desk lifts it', () => {
    expect(heard(short).all.stop).toHaveLength(1);
  });

  test('lifted, it is of those arms, and the gap of those that are on is read', () => {
    const { all, next } = heard(lifted(short));
    expect(all.notToRun.map(({ sentence }) => sentence).join(' ')).toContain(
      'with the arms that are off since',
    );
    expect(next).not.toBe('read-gap-again');
  });

  test('read clear with those that are on, nothing bars it any more', () => {
    for (const { all } of [heard(readWithNew), heard({ ...lifted(short), sheet: readWithNew.sheet })]) {
      expect([all.stop, all.notToRun]).toEqual([[], []]);
      expect(all.judgements.find(({ id }) => id === 'gap:piston-to-valve:1-intake')?.word).toBe('clear');
    }
  });

  test('read short with those that are on, it stops by that', () => {
    const worse = { ...BUILD, sheet: [...short.sheet, gap('now', 0.07, 'new')] };
    expect(heard(worse).all.stop.map(({ entryId }) => entryId)).toEqual(['now']);
  });
});
