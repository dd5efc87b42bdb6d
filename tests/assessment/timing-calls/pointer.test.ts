import { describe, expect, test } from 'vitest';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import type { Kept } from '../../tools/record/kept-workings.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { answer, codes, drop, figure, saying, stop, told } from './call.ts';

const said = saying(assessAsTold('timing-calls-pointer'));

describe('where it peaks', () => {
  test('without a stop: where it peaks by the wheel, and no verdict against the card', () => {
    const all = said([drop(62, 148, 108)]);
    expect(told(all)).toEqual([
      expect.stringMatching(
        /^By the wheel the intake peaks 105° after TDC\. But top dead centre is not proved.*No word against the card before that\. If it is 3° advanced against the card: Advance costs/,
      ),
    ]);
    expect(told(all).join(' ')).not.toContain('give or take');
    expect(figure(all, 'intake')).toEqual([104, 105, 106]);
  });

  test('with the pointer 1° out, left or shifted is not known: both figures, and what to do', () => {
    const all = said([drop(62, 148, 108), stop(37, 35)], [], { call: { ...PLAIN.call, goal: 'cam-timing' } });
    expect(told(all)[0]).toMatch(
      /pointer 1° out\. If it was left so, the peak is 104° after TDC\. No word against the card before that\. If it peaks 104° after TDC, it is 4° advanced/,
    );
    expect(figure(all, 'intake')).toEqual([103, 105, 106]);
    expect(codes(all)).toContain('pointer-out');
    expect(all.questions.find(({ code }) => code === 'pointer-out')?.test).toMatch(
      /^Shift the pointer 1°, held against the stop after TDC from 37° to 36°, until it reads 36° on both sides of the stop/,
    );
  });

  test('the earliest of the two figures is told as its own, whichever way the pointer is out', () => {
    // (57 + 148)/2 = 102.5, 3.5 early of a card of 106; 1.5 taken off leaves 104, 2 early.
    const later = told(said([drop(57, 148, 106), stop(34.5, 37.5)]))[0];
    expect(later).toMatch(/If it was left so, the peak is 104° after TDC/);
    expect(later).toMatch(/If it peaks 102\.5° after TDC, it is 3\.5° advanced/);
    // 111 and 112.5: the later one is the one that costs most.
    const retarded = told(said([drop(66, 156, 106), stop(34.5, 37.5)]))[0];
    expect(retarded).toMatch(/If it peaks 112\.5° after TDC, it is 6\.5° retarded/);
  });

  const POINTER = 'Was the pointer shifted before the lobe was read?';

  test('left as it was: its error is taken off, of an exhaust too', () => {
    const all = said(
      [drop(62, 148, 108), drop(-160, -70, 112, 'exhaust'), stop(37, 35)],
      [answer('pointer-out', POINTER, 'left', 9)],
    );
    // 104 after and 116 before: both 4° early.
    expect(told(all)).toEqual([
      expect.stringMatching(/^The intake peaks 104° after TDC.*4° advanced/),
      expect.stringMatching(/^The exhaust peaks 116° before TDC.*4° advanced/),
    ]);
    expect(told(all).join(' ')).not.toContain('not proved');
    expect(codes(all)).not.toContain('lobes-apart');
  });

  test('shifted first: it counts as it was read, proved once the stop reads alike', () => {
    const all = said([drop(62, 148, 108), stop(35, 37)], [answer('pointer-out', POINTER, 'shifted', 9)]);
    expect(told(all)[0]).toMatch(
      /^By the wheel the intake peaks 105°.*not proved.*no reading of it was kept after/,
    );
    const read = said(
      [drop(62, 148, 108), stop(35, 37), stop(36, 36)],
      [answer('pointer-out', POINTER, 'shifted', 9)],
    );
    expect(told(read)[0]).toMatch(/^The intake peaks 105°/);
    expect(told(read)[0]).not.toContain('not proved');
  });

  test('shifted after the lobe was read: the stop that reads alike since proves nothing of it', () => {
    const before = said([stop(37, 35), drop(62, 148, 108), stop(36, 36)]);
    expect(before.questions.find(({ code }) => code === 'pointer-out')?.test).toMatch(
      /now: read the lobe again/,
    );
    expect(told(before)[0]).toMatch(/not proved.*If it was left so, the peak is 104°/);
    const after = said([stop(37, 35), stop(36, 36), drop(62, 148, 108)]);
    expect(codes(after)).not.toContain('pointer-out');
    expect(told(after)[0]).not.toContain('not proved');
  });

  test('the stop alone says what the pointer reads once it stands right', () => {
    expect(told(said([stop(35, 37)]))[0]).toMatch(
      /1° out: shift the pointer 1°, held against the stop after TDC from 35° to 36°, until it reads 36° on both sides of the stop\.$/,
    );
    expect(told(said([stop(36, 36)]))[0]).toMatch(/proved/);
  });
});

describe('what is next in a call about timing', () => {
  const next = (kept: readonly Kept[]) =>
    said(kept, [], { card: { intake: {}, exhaust: {} }, call: { ...PLAIN.call, goal: 'cam-timing' } }).next;

  test('the stop, the lobe, its centreline on the card: no lobe lift is asked for', () => {
    expect(next([])).toMatchObject({ action: 'top-dead-centre' });
    expect(next([stop(36, 36)])).toMatchObject({ action: 'centreline' });
    expect(next([stop(37, 35)])?.sentence).toMatch(
      /^Shift the pointer 1°, held against the stop after TDC from 37° to 36°, until it reads 36° on both sides of the stop/,
    );
    const bare: Kept = ['centreline', { before: '62 deg', after: '148 deg' }];
    expect(next([stop(36, 36), bare])).toMatchObject({ action: 'card-centreline', step: 'timing' });
    expect(next([stop(36, 36), drop(62, 148, 108)])).toMatchObject({ step: 'notes' });
  });

  test('a pointer that is out is shifted, a peak in doubt is looked at, before anything is said', () => {
    expect(next([stop(37, 35), drop(62, 148, 108)])?.sentence).toMatch(/[Ss]hift the pointer 1°/);
    expect(next([stop(36, 36), drop(62, 188, 108)])?.sentence).toMatch(/[Tt]urn to the peak/);
  });
});

/* Shift, and read the stop until both are alike: trade practice 2.6. */
test('a pointer said to be shifted is not proved before the stop reads alike', () => {
  const shifted: Kept = [
    'centreline',
    { before: '62 deg', after: '148 deg', card: '108 deg', pointerOff: '0 deg' },
  ];
  const open = said([stop(37, 35), shifted]);
  expect(told(open)[0]).toMatch(
    /^By the wheel the intake peaks 105°.*no reading of it was kept after it was shifted/,
  );
  expect(open.details.timing.proved).toBe(false);
  const timing = { call: { ...PLAIN.call, goal: 'cam-timing' as const } };
  expect(said([stop(37, 35), shifted], [], timing).next?.sentence).toMatch(
    /^Read the stop again, until it reads 36° on both sides/,
  );
  // Whether the stop that reads alike was kept before the lobe or after it, nothing was moved between.
  for (const kept of [
    [stop(37, 35), stop(36, 36), shifted],
    [stop(37, 35), shifted, stop(36, 36)],
  ])
    expect(told(said(kept))[0]).not.toContain('not proved');
});

/* Within .25° a wheel is not read (common practice): 36.1 and 35.9 are .1 out, 36.3 and 35.7 are .3. */
test('a pointer that is out by less than a wheel is read stands right', () => {
  expect(told(said([stop(36.1, 35.9)]))).toEqual([expect.stringMatching(/alike both ways.*proved/)]);
  expect(told(said([stop(36.3, 35.7)]))).toEqual([expect.stringMatching(/shift the pointer \.3°/)]);
});
