import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { rowsOf } from '../../../server/mechanics/assessment/sheet/rows/rows.ts';
import type { ValveGear } from '../../../shared/schemas/words.ts';
import { read } from './plain-build.ts';
import { answered, EIGHT, heard, sixteen } from './whole-sheet.ts';

/*
 * How the lash was when the lifts of a sheet were read. Lash left in takes as much off the lift at the valve: trade
 * practice, Lash; common practice, no published source.
 */
const LASH = 'lash-not-said';
const geared = (gear: ValveGear | undefined): Evidence => ({
  ...EIGHT,
  engine: { ...EIGHT.engine, ...(gear === undefined ? {} : { gear }) },
  sheet: sixteen(1.6),
});
const ratioLacks = (evidence: Evidence) =>
  heard(evidence).all.judgements.find(({ id }) => id === 'side:light:intake')?.lacks;

describe('how the lash was is asked of the lifts of a sheet', () => {
  test.each([[undefined], ['pushrod'], ['cam-rocker'], ['finger-follower']] as const)('with %s', (gear) => {
    expect(heard(geared(gear)).asks).toContain(LASH);
    expect(ratioLacks(geared(gear))).toEqual(['how the lash was when they were read']);
    expect(ratioLacks(answered(geared(gear), LASH, 'zero'))).toEqual([]);
  });

  test('not of buckets, which have no ratio that it would make too low', () => {
    expect(heard({ ...geared('bucket'), rockers: {} }).asks).not.toContain(LASH);
  });

  test('which lifters were in, too, where pushrods were said to be', () => {
    const { lifter: _, ...engine } = EIGHT.engine;
    const sheet = sixteen(1.6, undefined, { lifter: 'not-said' });
    for (const more of [{}, { gear: 'pushrod' as const }])
      expect(heard({ ...EIGHT, engine: { ...engine, ...more }, sheet }).asks).toContain('lifter-not-said');
  });
});

describe('hydraulic lifters, said by the answer of the sheet', () => {
  const { lifter: _, ...engine } = EIGHT.engine;
  const notSaid: Evidence = { ...EIGHT, engine, sheet: sixteen(1.6, undefined, { lifter: 'not-said' }) };

  test('have no lash to be asked of, and none is put to them', () => {
    const hydraulic = answered(notSaid, 'lifter-not-said', 'hydraulic');
    expect(heard(hydraulic).asks).not.toContain(LASH);
    const zero = answered(answered(notSaid, LASH, 'zero'), 'lifter-not-said', 'hydraulic');
    const conditions = heard(zero).all.quantities.find(({ id }) => id.startsWith('sheet:ratio'))?.conditions;
    expect(conditions).not.toContain('zero lash');
  });

  test('solid ones are asked for it', () => {
    expect(heard(answered(notSaid, 'lifter-not-said', 'solid')).asks).toContain(LASH);
  });
});

describe('lash left in, as was answered', () => {
  const AT = 9_000;
  const later = (reading: SheetEvidence, at: number, more: Partial<SheetEvidence> = {}): SheetEvidence => ({
    ...reading,
    id: `${reading.id}-${at}`,
    line: AT + at,
    ...more,
  });
  const left = answered(geared('pushrod'), LASH, 'set', AT);
  const lifts = left.sheet.filter(({ kind }) => kind === 'valve-lift');
  const lobes = left.sheet.filter(({ kind }) => kind === 'lobe-lift');
  const lashOf = (evidence: Evidence, valve: string) =>
    heard(evidence).all.quantities.find(({ id }) => id === `sheet:ratio:light:${valve}`)?.conditions;

  test('is next: all of them again at zero', () => {
    expect(heard(left).next).toBe('read-again');
    expect(heard(left).sentence).toMatch(/with the lash taken up to zero/);
  });

  test('in any reading of a valve makes what they come to one with the lash in, whichever was entered first', () => {
    const both = (['zero', 'set'] as const).map((lash) => read(1, 'intake', 'valve-lift', 0.56, { lash }));
    for (const sheet of [both, both.toReversed()]) {
      const lots = rowsOf({ ...EIGHT, sheet })[0]?.lifts;
      expect(lots?.map(({ lash }) => lash)).toEqual(['set']);
    }
    const said = both.slice(0, 1);
    const sheet = [...said, read(1, 'intake', 'valve-lift', 0.56)];
    expect(rowsOf({ ...EIGHT, sheet })[0]?.lifts[0]?.lash).toBeUndefined();
  });

  test('a typing mistake put right since is no reading at zero lash', () => {
    const [first, ...rest] = lifts;
    const right = first === undefined ? [] : [later(first, 5, { entered: first.line })];
    expect(lashOf({ ...left, sheet: [...lobes, ...right, ...rest] }, '1-intake')).toContain('lash left in');
  });

  test('nor does it take the pass beside it away', () => {
    const [first, ...rest] = lifts;
    if (first === undefined) throw new Error('no lift');
    const beside = { ...read(1, 'intake', 'valve-lift', 0.5605), line: first.line };
    const right = later(first, 5, { entered: first.line });
    const told = heard({ ...left, sheet: [...lobes, right, beside, ...rest] }).all.details.sheet;
    const cells = told.rows.find(({ cylinder, valve }) => cylinder === 1 && valve === 'intake')?.cells;
    expect(cells?.find(({ kind }) => kind === 'valve-lift')).toMatchObject({ passes: 2 });
  });

  test('read again, and then answered otherwise: no reading is put aside by what was answered before', () => {
    const again = { ...left, sheet: [...left.sheet, ...lifts.map((each) => later(each, 5))] };
    const passes = (evidence: Evidence) =>
      heard(evidence)
        .all.details.sheet.rows[0]?.cells.filter(({ kind }) => kind === 'valve-lift')
        .map((each) => each.passes);
    expect(passes(again)).toEqual([1]);
    expect(passes(answered(again, LASH, 'zero', AT + 50))).toEqual([2]);
  });
});

describe('a whole sheet that is short by its lash', () => {
  // .016 in off lifts of .560 and .552 in is 3 % of 1.6.
  const short: Evidence = {
    ...EIGHT,
    call: { ...EIGHT.call, goal: 'verify-ratio' },
    sheet: sixteen(1.6, ({ lift }) => ({ lift: lift - 0.016 })),
  };
  const said = (evidence: Evidence) =>
    heard(evidence)
      .all.headlines.map(({ sentence }) => sentence)
      .join('\n');

  test('is off what they are sold as until it is said, and then short by the lash: what it is with that put back', () => {
    expect(heard(short).asks).toContain('side-off');
    const left = answered(short, LASH, 'set');
    expect(heard(left).asks).not.toContain('side-off');
    expect(said(left)).toContain('1.600 with the card’s .016 in of lash put back');
    expect(said(left)).not.toContain('%');
  });

  test('and off all the same where that does not make it', () => {
    const far = { ...short, sheet: sixteen(1.5, ({ lift }) => ({ lift: lift - 0.016 })) };
    expect(heard(answered(far, LASH, 'set')).asks).toContain('side-off');
  });
});
