import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../plain-build.ts';

/*
 * Gaps that were read with other arms than they are told of. Limits of the playbook (common practice); what a train bends
 * on its running springs is in seeds/allowances.json with its source; figures by hand, engines invented.
 */
const build = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: {
    assumedRatio: 1.5,
    intake: { lobeLift: 0.34 * IN, lash: 0.016 * IN },
    exhaust: { lobeLift: 0.34 * IN, lash: 0.016 * IN },
  },
  springs: {},
  rockers: { soldAs: 1.5, planned: 1.6 },
  sheet,
  ...more,
});
const judged = (evidence: Evidence, id: string) => assess(evidence).judgements.find((each) => each.id === id);
const codes = (evidence: Evidence) => assess(evidence).questions.map(({ code }) => code);

describe('what bends is in a gap whatever ratio it is told for', () => {
  // .120 − .340 × .1 = .086 of .050; on the running spring up to .040 less: .046 before the ratios take theirs.
  const of = (
    spring: SheetEvidence['spring'],
    more: Partial<Evidence> = {},
    arms: 'these' | 'before' = 'these',
  ) => build([read(1, 'exhaust', 'retainer-to-seal', 0.12, { spring, arms })], more);

  test('retainer to seal, read with the arms that are on or with those before', () => {
    for (const arms of ['these', 'before'] as const) {
      const id = `gap:retainer-to-seal:1-exhaust${arms === 'these' ? ':worked-out' : ''}`;
      expect(judged(of('light', {}, arms), id)?.word).toBe('clear');
      expect(judged(of('running', {}, arms), id)?.word).toBe('close');
      expect(judged(of('running', {}, arms), id)?.lacks).toEqual([
        expect.stringMatching(/^a reading on a light spring/),
      ]);
      expect(judged(of('not-said', {}, arms), id)?.lacks).toEqual(['which spring was on the valve']);
    }
  });

  test('a second plan beside it, and a ratio that goes down, are no way round it', () => {
    const two = of('running', { rockers: { soldAs: 1.5, planned: 1.6, alsoPlanned: [1.4] } });
    const one = judged(two, 'gap:retainer-to-seal:1-exhaust:worked-out:planned-1.4');
    expect(one?.sentence).toMatch(/the gap was read on the running spring: up to \.040 in is taken off/i);
    expect(judged(of('running'), 'gap:retainer-to-seal:1-exhaust')?.word).toBe('clear');
  });

  test('room to coil bind is not made larger by it', () => {
    const bind = (spring: SheetEvidence['spring']) =>
      judged(build([read(1, 'intake', 'coil-bind', 0.16, { spring })]), 'gap:coil-bind:1-intake:worked-out')
        ?.word;
    expect([bind('light'), bind('running')]).toEqual(['clear', 'clear']);
  });
});

describe('a gap that was read with other arms, beside what comes out with those', () => {
  // With 1.5: 1.750 − 1.160 − (.340 × 1.5 − .016) = .096, .071 at the least.
  const springs = { installedHeight: 1.75 * IN, solidHeight: 1.16 * IN };
  const of = (inches: number, more: Partial<Evidence> = {}, how: Partial<SheetEvidence> = {}) =>
    build([read(1, 'intake', 'coil-bind', inches, how)], {
      springs,
      rockers: { soldAs: 1.5, planned: 1.4 },
      ...more,
    });
  const OTHERS = 'gap:coil-bind:intake';

  test('read less: asked, and the same figures clear no other valve of any plan', () => {
    expect(codes(of(0.095))).not.toContain('gap-against-calculated');
    expect(judged(of(0.095), OTHERS)?.word).toBe('clear');
    for (const how of [{}, { arms: 'before' }] as const) {
      expect(codes(of(0.065, {}, how))).toContain('gap-against-calculated');
      expect(judged(of(0.065, {}, how), OTHERS)?.word).toBeUndefined();
    }
    const two = of(0.065, { rockers: { soldAs: 1.5, planned: 1.4, alsoPlanned: [1.45] } });
    expect(judged(two, `${OTHERS}:planned-1.45`)?.word).toBeUndefined();
    expect(codes(two).filter((code) => code === 'gap-against-calculated')).toHaveLength(1);
  });

  test('what is next is its answer, and its question stands first', () => {
    const { next, questions } = assess(of(0.065));
    expect(next?.action).toBe('gap-waits:coil-bind');
    expect(questions[0]).toMatchObject({ code: 'gap-against-calculated', isNext: true });
  });

  test('what is worked out from the reading itself keeps its word', () => {
    expect(judged(of(0.065), 'gap:coil-bind:1-intake:worked-out')?.word).toBe('clear');
  });

  test('read with arms that were sold as another ratio then, it is set against what those leave', () => {
    const now = { rockers: { soldAs: 1.6 } };
    // With 1.6 it comes out at .062; with the 1.5 of then at .096: .095 is what those leave.
    const code = (inches: number) => codes(of(inches, now, { soldAsThen: 1.5 }));
    expect(code(0.095)).not.toContain('gap-against-calculated');
    expect(code(0.065)).toContain('gap-against-calculated');
  });
});

test('read again with the arm that is on, what was read with the other is not what is told', () => {
  const seats = [{ cylinder: 1, valve: 'intake', armId: 'new' }] as const;
  const arms = ['old', 'new'].map((id) => ({
    id,
    name: id,
    ratioStamp: '',
    otherNumber: '',
    boxLabel: '',
  }));
  const evidence = build(
    [
      read(1, 'intake', 'slot-to-stud', 0.09, { armId: 'old' }),
      read(1, 'intake', 'slot-to-stud', 0.12, { armId: 'new' }),
    ],
    { rockers: { soldAs: 1.5 }, seats, arms },
  );
  expect(judged(evidence, 'gap:slot-to-stud:1-intake')?.sentence).toMatch(/\.120 in/);
});
