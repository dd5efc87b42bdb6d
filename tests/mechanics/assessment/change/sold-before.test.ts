import { describe, expect, test } from 'vitest';
import { changePart } from '../../../../server/mechanics/assessment/change/change.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../plain-build.ts';

/*
 * Piston to valve less the lobe's lift there times the change of ratio: common practice, no published source. The lobe is
 * .150 in up there, and 1.7 arms are on.
 */

const gap = (id: string, inches: number, soldAsThen: number, more: Partial<SheetEvidence> = {}) => ({
  ...read(1, 'intake', 'piston-to-valve', inches, { soldAsThen, ...more }),
  id,
});

function pistonOf(sheet: readonly SheetEvidence[], rockers: Evidence['rockers'] = { soldAs: 1.7 }) {
  const { detail } = changePart(
    {
      ...PLAIN,
      call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
      rockers,
      taken: { ...PLAIN.taken, intake: { lobeLiftAtClosest: 0.15 * IN } },
      arms: ['on', 'off'].map((id) => ({ id, name: id, ratioStamp: '', otherNumber: '', boxLabel: '' })),
      seats: [{ cylinder: 1, valve: 'intake', armId: 'on' }],
      sheet,
    },
    [],
  );
  const here = detail.find(({ key }) => key.startsWith('1-intake'));
  const found = here?.gaps.find(({ name }) => name === 'piston-to-valve');
  return {
    value: (found?.after?.value ?? 0) / IN,
    word: found?.word,
    restsOn: found?.restsOn,
    assumptions: here?.assumptions,
  };
}

describe('gaps that were read with arms of two ratios since', () => {
  const five = gap('five', 0.11, 1.5);
  const six = gap('six', 0.1, 1.6);

  test('each is worked out from its own, and the worst of what comes out stands, whichever was entered first', () => {
    // .110 − .150 × .2 = .080 and .100 − .150 × .1 = .085.
    for (const sheet of [
      [five, six],
      [six, five],
    ]) {
      const { value, restsOn, assumptions } = pistonOf(sheet);
      expect(value).toBeCloseTo(0.08, 4);
      expect(restsOn).toEqual(['five']);
      expect(assumptions).toContain(
        'a gap that was read with arms of 1.5 and 1.6 is worked out from the ratio of its own arms',
      );
    }
    expect(pistonOf([six]).value).toBeCloseTo(0.085, 4);
  });

  test('one that was struck out says nothing of the ratio of another', () => {
    const struck = gap('struck', 0.3, 1.6, { standing: false, armId: 'off' });
    const alone = pistonOf([five]);
    expect(alone.value).toBeCloseTo(0.08, 4);
    expect(pistonOf([struck, five])).toEqual(alone);
    expect(pistonOf([five, struck])).toEqual(alone);
  });

  test('one that was read with the arms that are on is worked out from those, where others are planned', () => {
    // On now 1.6, planned 1.7: .100 − .150 × .1 = .085; the other .120 − .150 × .2 = .090.
    const now = { ...read(1, 'intake', 'piston-to-valve', 0.1), id: 'now' };
    const old = gap('old', 0.12, 1.5);
    for (const sheet of [
      [now, old],
      [old, now],
    ]) {
      const { value, restsOn } = pistonOf(sheet, { soldAs: 1.6, planned: 1.7 });
      expect(value).toBeCloseTo(0.085, 4);
      expect(restsOn).toEqual(['now']);
    }
  });
});
