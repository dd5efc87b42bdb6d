import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { changePart } from '../../../../server/mechanics/assessment/change/change.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { read } from '../plain-build.ts';
import { arm, CHANGE, gapOf, lashAnswered, readOf } from './change-of-arms.ts';

/*
 * What is planned says nothing of what is on: 1.5 arms go on being 1.5 arms when leaving them is thought of as well. .110 −
 * .120 × .1 = .098 and .090 − .062 = .028 (as in ratio-then.test.ts).
 */
const SHEET = (['intake', 'exhaust'] as const).flatMap((valve) => [
  gapOf(`piston-${valve}`, 'piston-to-valve', 0.11, {}, valve),
  gapOf(`pushrod-${valve}`, 'pushrod-to-head', 0.09, {}, valve),
]);

const build = (rockers: Partial<Evidence['rockers']>, more: Partial<Evidence> = {}): Evidence => ({
  ...CHANGE,
  arms: [],
  rockers: { ...CHANGE.rockers, ...rockers },
  sheet: SHEET,
  answers: [
    lashAnswered('piston-intake', 'intake', 'zero'),
    lashAnswered('piston-exhaust', 'exhaust', 'zero'),
  ],
  ...more,
});

function figures(evidence: Evidence, key: string) {
  const here = changePart(evidence, []).detail.find((each) => each.key === key);
  const at = (name: string) =>
    (here?.gaps.find((each) => each.name === name)?.after?.value ?? Number.NaN) / IN;
  return { before: here?.before?.value, piston: at('piston-to-valve'), pushrod: at('pushrod-to-head') };
}

const changedOnes = (sentences: readonly { readonly sentence: string }[]) =>
  sentences.filter(({ sentence }) => /nothing changes/.test(sentence)).map(({ sentence }) => sentence);

describe('leaving it alone as a second plan', () => {
  test('makes nothing else of the first, in either order and with a third beside it', () => {
    const alone = figures(build({}), '1-intake');
    expect(alone.before).toBe(1.5);
    expect(alone.piston).toBeCloseTo(0.098, 3);
    expect(alone.pushrod).toBeCloseTo(0.028, 3);
    for (const alsoPlanned of [[1.5], [1.5, 1.7], [1.7, 1.5]])
      expect(figures(build({ alsoPlanned }), '1-intake')).toEqual(alone);
  });

  test('it is the second that changes nothing, and it is told as what they are sold as', () => {
    const { headlines } = assess(build({ alsoPlanned: [1.5] }));
    expect(changedOnes(headlines)).toEqual([
      'With the planned 1.5 nothing changes: it is the 1.5 they are sold as. If another ratio is meant, or other arms are on, say which.',
    ]);
    const left = figures(build({ alsoPlanned: [1.5] }), '1-intake:planned-1.5');
    expect([left.piston, left.pushrod]).toEqual([expect.closeTo(0.11, 4), expect.closeTo(0.09, 4)]);
  });

  test('on the exhausts alone: 1.5 stays 1.5 there', () => {
    const split = build({ plannedExhaust: 1.5 });
    expect(figures(split, '1-intake')).toEqual(figures(build({}), '1-intake'));
    const { before, piston } = figures(split, '1-exhaust');
    expect(before).toBe(1.5);
    expect(piston).toBeCloseTo(0.11, 4);
  });

  test('of stamped arms that are on, as of arms that are sold as it', () => {
    const seats = [{ cylinder: 1, valve: 'intake', armId: 'on' }] as const;
    const more = { arms: [arm('on', '1.5')], seats };
    const alone = figures(build({}, more), '1-intake');
    expect(figures(build({ alsoPlanned: [1.5] }, more), '1-intake')).toEqual(alone);
    const measured = changePart(build({ alsoPlanned: [1.5] }, more), [readOf('on', 1.52)]).detail;
    expect(measured.find(({ key }) => key === '1-intake')?.before?.value).toBe(1.52);
  });

  test('sold as what the whole engine is to have, they are those that are to be fitted', () => {
    const { headlines } = assess(build({ soldAs: 1.6 }, { sheet: [] }));
    expect(changedOnes(headlines)).toEqual([expect.stringMatching(/it is the 1\.6 the card assumes/)]);
    const withTwo = assess(build({ soldAs: 1.6, alsoPlanned: [1.7] }, { sheet: [] }));
    expect(changedOnes(withTwo.headlines)).toEqual(changedOnes(headlines));
  });
});

test('a gap that was read with the mark of the plan is one of the plan', () => {
  const seats = [{ cylinder: 1, valve: 'intake', armId: 'new' }] as const;
  const evidence: Evidence = {
    ...CHANGE,
    seats,
    rockers: { ...CHANGE.rockers, alsoPlanned: [1.5] },
    sheet: [{ ...read(1, 'intake', 'pushrod-to-head', 0.05, { armId: 'new' }), id: 'new-one' }],
  };
  const gap = changePart(evidence, []).detail[0]?.gaps.find(({ name }) => name === 'pushrod-to-head');
  expect([gap?.ofSheet, (gap?.after?.value ?? 0) / IN]).toEqual([true, expect.closeTo(0.05, 4)]);
});
