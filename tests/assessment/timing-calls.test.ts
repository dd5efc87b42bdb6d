import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence, Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { computation as centreline } from '../../server/mechanics/computations/centreline.ts';
import { PLAIN } from '../mechanics/assessment/plain-build.ts';
import { runner } from '../mechanics/helpers/runner.ts';
import { type Kept, workingsOf } from '../tools/record/kept-workings.ts';
import { assessAsTold } from '../tools/told/assess-as-told.ts';

const assess = assessAsTold('timing-calls');

/*
 * Calls about cam timing. By hand: equal drop at 62 and 148 peaks at 105; an exhaust at 160 and 70 before TDC peaks at
 * 115 before it. The stop read at 37 after and 35 before stands at 36: the wheel reads 1° too much after TDC (as 36.75
 * and 35.25 do by .75, a printed degreeing text), so that intake peaks at 104.
 */

const drop = (before: number, after: number, card: number, side = 'intake'): Kept => [
  'centreline',
  { before: `${before} deg`, after: `${after} deg`, card: `${card} deg`, side },
];
const stop = (after: number, before: number): Kept => [
  'top-dead-centre',
  { stopReadings: [`${after} deg`, `${before} deg`] },
];
const answer = (code: string, ask: string, said: string, line: number): AnswerEvidence => ({
  id: `answer-${code}`,
  line,
  code,
  question: ask,
  answer: said,
});

function said(kept: readonly Kept[], answers: readonly AnswerEvidence[] = [], base: Partial<Evidence> = {}) {
  return assess({
    ...PLAIN,
    ...base,
    answers,
    workings: workingsOf(kept),
  });
}

const told = ({ headlines }: Assessment) =>
  headlines.filter(({ step }) => step === 'timing').map(({ sentence }) => sentence);
const codes = ({ questions }: Assessment) =>
  questions.filter(({ step }) => step === 'timing').map(({ code }) => code);
const figure = ({ quantities }: Assessment, side: string) => {
  const found = quantities.find(({ id }) => id === `timing:centreline:${side}`);
  const degrees = (si = Number.NaN) => Math.round((si * 18000) / Math.PI) / 100;
  return [degrees(found?.low), degrees(found?.value), degrees(found?.high)];
};

describe('from which side of top dead centre', () => {
  const { refused, run, number } = runner(centreline);
  const inputs = (before: number, after: number, side: string) => ({
    before: `${before} deg`,
    after: `${after} deg`,
    side,
  });

  test.each([
    ['an exhaust without its minus', 70, 160, 'exhaust'],
    ['another', 55, 149, 'exhaust'],
    ['an intake told before TDC', -150, -66, 'intake'],
    ['an intake read on a lobe a turn away', 210, 290, 'intake'],
  ])('%s is refused, and told how it is written', (_, before, after, side) => {
    expect(refused(inputs(before, after, side))).toEqual([
      '/before impossible-input',
      '/after impossible-input',
    ]);
    expect(() => run(inputs(before, after, side))).toThrow();
  });

  test('the exhaust the other way round is told how it is written', () => {
    expect(refused(inputs(160, 70, 'exhaust'))).toHaveLength(2);
  });

  test('written as it is asked for it is 115 before TDC; so is one counted on', () => {
    expect(number(inputs(-160, -70, 'exhaust'), 'centreline')).toBeCloseTo(115, 9);
    expect(number(inputs(200, 290, 'exhaust'), 'centreline')).toBeCloseTo(115, 9);
  });
});

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
      /pointer 1° out\. If it was left so, the peak is 104° after TDC\. No word against the card before that\. If it is 4° advanced/,
    );
    expect(figure(all, 'intake')).toEqual([103, 105, 106]);
    expect(codes(all)).toContain('pointer-out');
    expect(all.questions.find(({ code }) => code === 'pointer-out')?.test).toMatch(
      /^Shift the pointer 1°, until it reads 36° on both sides of the stop/,
    );
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
      /1° out: shift the pointer 1°, until it reads 36° on both sides of the stop\.$/,
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
      /^Shift the pointer 1°, until it reads 36° on both sides of the stop/,
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

describe('a peak that hardly any cam has', () => {
  test('125° is asked, and has no word against the card until then', () => {
    const all = said([drop(62, 188, 108)], [], { call: { ...PLAIN.call, goal: 'cam-timing' } });
    expect(codes(all)).toContain('centreline-unusual');
    expect(told(all)[0]).not.toMatch(/retarded|costs/);
    expect(told(all)[0]).toMatch(/125° is outside of the usual 95 to 120/);
  });

  test('by a card that has it so it is that cam’s', () => {
    const all = said([stop(36, 36), drop(80, 166, 124)]);
    expect(codes(all)).not.toContain('centreline-unusual');
    expect(told(all)[0]).toMatch(/cannot be told from the card/);
  });

  test('said to be told right, it counts', () => {
    const ask = 'Was each reading told from the right side of its dead centre, and on the right lobe?';
    const all = said(
      [drop(62, 188, 108)],
      [{ ...answer('centreline-unusual', ask, 'not-found', 9), found: false }],
    );
    expect(told(all)[0]).toMatch(/17° retarded/);
  });
});

describe('one lobe, two centrelines', () => {
  const ASK = 'Was the cam moved between these readings, or was one of them read wrong?';
  const two = [drop(62, 148, 108), drop(66, 150, 108)];

  test('105 and 108 are asked in either order, with no word', () => {
    for (const kept of [two, two.toReversed()]) {
      const all = said(kept);
      expect(codes(all)).toContain('centrelines-differ');
      expect(told(all)[0]).toMatch(/105° and 108°.*no word against the card/);
    }
  });

  test('the cam was moved: the last one counts', () => {
    const all = said(two, [{ ...answer('centrelines-differ', ASK, 'not-found', 9), found: false }]);
    expect(told(all)[0]).toMatch(/^By the wheel the intake peaks 108°/);
  });

  test('one was read wrong: what is read after that counts', () => {
    const found = { ...answer('centrelines-differ', ASK, 'found', 3), found: true };
    const open = said(two, [found]);
    expect(told(open)[0]).toMatch(/no word against the card/);
    const again = said([...two, stop(36, 36), drop(62, 148, 108)], [found]);
    expect(codes(again)).not.toContain('centrelines-differ');
    expect(told(again)[0]).toMatch(/^The intake peaks 105°/);
  });

  test('1° apart is the wheel', () => {
    expect(codes(said([drop(62, 148, 108), drop(63, 149, 108)]))).not.toContain('centrelines-differ');
  });
});

/*
 * By hand: an equal drop at 58 and 146 peaks at 102; opens 20 before TDC, closes 52 after BDC: (180 + 52 − 20)/2 = 106.
 * That an advance costs the intake its gap: a cam maker’s pages (trade practice 2.8).
 */
describe('one lobe, read both ways', () => {
  const ASK =
    'Was the cam moved between these two readings, is the lobe not symmetric, or was a side told wrong?';
  const events: Kept = [
    'centreline',
    { opens: '20 BTDC', closes: '52 ABDC', side: 'intake', card: '106 deg' },
  ];
  const both = [stop(36, 36), drop(58, 146, 106), events];

  test('4° apart is asked in either order, and what the earlier one costs stands', () => {
    for (const kept of [both, both.toReversed()]) {
      const all = said(kept);
      expect(codes(all)).toContain('centrelines-differ');
      expect(told(all)[0]).toMatch(/equal drop the intake peaks at 102°, by its events at 106°: 4° apart/);
      expect(told(all)[0]).toMatch(/no word against the card yet.*4° advanced.*costs intake gap/);
    }
  });

  test('a lobe that is not symmetric counts by its equal drop', () => {
    const all = said(both, [answer('centrelines-differ', ASK, 'asymmetric', 9)]);
    expect(told(all)[0]).toMatch(/^The intake peaks 102°.*4° advanced/);
  });

  test('a cam that was moved counts as it was read last', () => {
    const all = said(both, [answer('centrelines-differ', ASK, 'moved', 9)]);
    expect(told(all)[0]).toMatch(/^The intake peaks 106°.*straight up/);
  });

  test('one read wrong: the lobe is read again, and that counts', () => {
    const found = { ...answer('centrelines-differ', ASK, 'found', 4), found: true };
    expect(told(said(both, [found]))[0]).toMatch(/no word against the card/);
    const again = said([...both, stop(36, 36), drop(58, 146, 106)], [found]);
    expect(told(again)[0]).toMatch(/^The intake peaks 102°/);
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
