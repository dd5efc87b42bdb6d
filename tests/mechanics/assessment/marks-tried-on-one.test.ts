import { describe, expect, test } from 'vitest';
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { marksPart } from '../../../server/mechanics/assessment/marks/marks.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { ARM, RATIO } from './ratio-of-one.ts';
import { tipMark } from './tip-mark.ts';

/* A .600 lift on a 1.60 in arm: least sweep .028377, looked at again over .0484 (check values 8); the rest common practice, no published source. */

const told = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}) =>
  marksPart({ ...PLAIN, ...ARM, ...more, tipMarks }, [RATIO]);
const at = (cylinder: number, width: number, more: Partial<TipMarkEvidence> = {}) =>
  tipMark(`mark-${cylinder}-${width}`, width, { cylinder, pushrod: 7.8 * IN, ...more });
const triedOn = (tipMarks: readonly TipMarkEvidence[]) =>
  told(tipMarks).questions.flatMap(({ code, about }) =>
    code === 'mark-wide' && about.of === 'valve' ? [about.cylinder] : [],
  );
const firstOf = (tipMarks: readonly TipMarkEvidence[], cylinder: number) =>
  told(tipMarks).detail.valves.find((each) => each.cylinder === cylinder)?.first?.said;

describe('valves with marks alike at one setting', () => {
  const three = [at(1, 0.06), at(3, 0.062), at(5, 0.06)];

  test('longer and shorter are tried on one of them, and the others wait for it', () => {
    expect(triedOn(three)).toEqual([1]);
    expect(firstOf(three, 1)).toMatch(/^Try \.050 in longer and \.050 in shorter/);
    expect(firstOf(three, 3)).toBe(
      'As 1 intake at that setting: it is tried there first, and goes for this one too.',
    );
  });

  test('they wait for the one where more was tried already', () => {
    const further = [...three, at(5, 0.058, { id: 'longer', pushrod: 7.85 * IN })];
    expect(firstOf(further, 1)).toMatch(/^As 5 intake/);
    expect(triedOn(further)).toEqual([5]);
  });

  test.each([
    ['wider by more than ink is read to', at(3, 0.075)],
    ['made at another length', at(3, 0.06, { pushrod: 7.75 * IN })],
    ['off to one side', at(3, 0.06, { side: 'exhaust', off: 0.03 * IN })],
  ])('one that is %s is its own case', (_what, other) => {
    expect(firstOf([at(1, 0.06), other], 3)).not.toMatch(/^As 1 intake/);
  });
});
