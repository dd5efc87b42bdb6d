import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { answered, armOf, EIGHT, heard, setUpOn, sixteen } from '../whole-sheet.ts';

/*
 * Gaps of valves that the per-valve sheet read. Figures invented; lobes .350 and .345, lash .016, so that the net lift of a
 * 1.70 is .579 and .5705 by hand, and of a 1.6 .544 and .536.
 */
const SPRINGS = { installedHeight: 1.8 * IN, solidHeight: 1.06 * IN };

const CHANGE: Evidence = {
  ...EIGHT,
  call: { ...EIGHT.call, goal: 'clearances-after-a-change' },
  card: { ...EIGHT.card, assumedRatio: 1.5 },
  rockers: { soldAs: 1.6 },
  springs: { ...SPRINGS, retainerToSeal: 0.615 * IN },
};

const withSheet = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence =>
  answered({ ...CHANGE, ...more, sheet }, 'lash-not-said', 'zero');

const changeOf = (evidence: Evidence) =>
  heard(evidence).all.details.change.map(({ key, after, gaps }) => ({
    key,
    ratio: after?.value.toFixed(2),
    from: after?.from,
    seal: gaps.find(({ name }) => name === 'retainer-to-seal'),
  }));

const clearOn = (evidence: Evidence): string[] =>
  changeOf(evidence).flatMap(({ key, seal }) => (seal?.word === 'clear' ? [key] : []));

describe('all sixteen read 1.70 where they are sold as 1.6', () => {
  const evidence = withSheet(sixteen(1.7));

  test('each side is told as one, by what was read: .615 − (.345 × 1.70 − .016) = .0445, .615 − .579 = .036', () => {
    const told = changeOf(evidence);
    expect(told.map(({ key, ratio, from }) => [key, ratio, from])).toEqual([
      ['intake', '1.70', 'measured'],
      ['exhaust', '1.70', 'measured'],
    ]);
    expect((told[1]?.seal?.after?.value ?? 0) / IN).toBeCloseTo(0.0445, 2);
    expect((told[0]?.seal?.after?.value ?? 0) / IN).toBeCloseTo(0.036, 2);
  });

  test('nothing is clear on the ratio on the box, and nobody is sent to read one on a light spring', () => {
    expect(clearOn(evidence)).toEqual([]);
    expect(heard(evidence).headlines.join(' ')).not.toContain('the 1.6 they are sold as: clear');
    expect(heard(evidence).sentence).not.toContain('on a light spring too');
  });

  test('nor while nobody said how the lash was: no word stands before that', () => {
    const before = { ...CHANGE, sheet: sixteen(1.7) };
    expect(changeOf(before).map(({ seal }) => seal?.word)).not.toContain('clear');
    expect(changeOf(before).flatMap(({ seal }) => seal?.lacks.map(({ settles }) => settles))).toContain(
      'lash-not-said',
    );
  });

  test('said in another order it is the same', () => {
    const turned = { ...evidence, sheet: evidence.sheet.toReversed() };
    expect(heard(turned).headlines).toEqual(heard(evidence).headlines);
  });
});

test('read with the lash left in, it is not taken off once more: .615 − (.345 × 1.6 − .016) = .079', () => {
  const sheet = sixteen(1.6, ({ lift }) => ({ lift: lift - 0.016 }));
  const told = changeOf(answered({ ...CHANGE, sheet }, 'lash-not-said', 'set')).find(
    ({ key }) => key === 'exhaust',
  );
  const room = (told?.seal?.after?.value ?? 0) / IN;
  expect(room).toBeGreaterThan(0.077);
  expect(room).toBeLessThan(0.081);
  expect(told?.seal?.word).toBeUndefined();
});

describe('one valve that reads unlike the others', () => {
  const odd = sixteen(1.645, ({ lift }, at) => (at === '3 exhaust' ? { lift: lift + 0.026 } : {}));
  const evidence = withSheet(odd, { springs: { ...SPRINGS, retainerToSeal: 0.575 * IN } });

  test('is told by itself, the others as one', () => {
    expect(changeOf(evidence).map(({ key, ratio }) => [key, ratio])).toEqual([
      ['intake', '1.65'],
      ['3-exhaust', '1.72'],
      ['exhaust', '1.65'],
    ]);
  });

  test('short by its own ratio it is read once more before anything that is close', () => {
    expect(changeOf(evidence).find(({ key }) => key === '3-exhaust')?.seal?.word).toBe('short');
    expect(heard(evidence).sentence).toMatch(/^Read 3 exhaust once more/);
  });
});

test('half a side read: each valve that was has its own, and the others have no word by a ratio that all of these deny', () => {
  const half = sixteen(1.7).filter(({ cylinder }) => cylinder < 5);
  const told = changeOf(withSheet(half, { springs: { ...SPRINGS, retainerToSeal: 0.65 * IN } }));
  expect(told.filter(({ key }) => key.startsWith('4-')).map(({ ratio }) => ratio)).toEqual(['1.70', '1.70']);
  const others = told.filter(({ key }) => !key.includes('-'));
  expect(others.map(({ from, seal }) => [from, seal?.word])).toEqual([
    ['sold-as', undefined],
    ['sold-as', undefined],
  ]);
});

test('with another ratio planned what was read is the ratio before of every valve', () => {
  const planned = withSheet(sixteen(1.645), { rockers: { soldAs: 1.6, planned: 1.7 } });
  expect(heard(planned).all.details.change.map(({ key, before, plan }) => [key, before?.from, plan])).toEqual(
    [
      ['intake', 'measured', 1.7],
      ['exhaust', 'measured', 1.7],
    ],
  );
});

describe('an arm of the plan that reads far off it', () => {
  const evidence: Evidence = {
    ...CHANGE,
    rockers: { soldAs: 1.5, planned: 1.6 },
    springs: { ...SPRINGS, retainerToSeal: 0.645 * IN },
    arms: [armOf('new')],
    seats: [{ cylinder: 1, valve: 'intake', armId: 'arm-new' }],
    ...setUpOn(1, 'arm-new', [0.5955, 0.596, 0.5955]),
  };
  const own = changeOf(evidence).find(({ key }) => key === '1-intake')?.seal;

  test('has no word by the plan; what it would leave as read is said: .645 − (.596 − .016) = .065', () => {
    expect(own?.word).toBeUndefined();
    expect(own?.because.join()).toMatch(/reads 1\.70\d as it stands: with that it would be \.06[56] in/);
    expect(clearOn(evidence)).not.toContain('1-intake');
    expect(heard(evidence).headlines.join(' ')).toContain(
      'No word yet on retainer to seal and room to coil bind on 1 intake',
    );
  });

  test('the others that nothing was read of keep the plan’s', () => {
    expect(clearOn(evidence)).toContain('intake');
  });

  test('what is next is a reading of that arm', () => {
    expect(heard(evidence).all.next?.step).toBe('ratio');
    expect(heard(evidence).sentence).toMatch(/^1 intake: /);
  });
});
