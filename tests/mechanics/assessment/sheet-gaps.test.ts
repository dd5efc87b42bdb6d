import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { sheetPart } from '../../../server/mechanics/assessment/sheet/sheet.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from './plain-build.ts';

const judged = (evidence: Evidence, id: string) =>
  sheetPart(evidence).judgements.find((each) => each.id === id);

describe('gaps of a row', () => {
  // The card has no lash, so that none can be in what was read.
  const on = (sheet: readonly SheetEvidence[]): Evidence => ({
    ...PLAIN,
    card: { ...PLAIN.card, intake: { ...PLAIN.card.intake, lash: 0 } },
    sheet,
  });
  const ptv = (value: number, more: Partial<SheetEvidence> = {}) =>
    read(1, 'intake', 'piston-to-valve', value, more);
  const id = 'gap:piston-to-valve:1-intake';

  test('the worst reading stands; a larger one does not replace it, and a struck one does not count', () => {
    const short = ptv(0.062);
    const part = sheetPart(on([short, ptv(0.095)]));
    expect(part.judgements.find((each) => each.id === id)?.word).toBe('short');
    expect(part.stop[0]?.entryId).toBe(short.id);
    expect(judged(on([ptv(0.095), { ...short, standing: false }]), id)?.word).toBe('clear');
  });

  test('an indicator tells .083 from a limit of .080, clay does not: ± of each tool, common practice', () => {
    expect(judged(on([ptv(0.083)]), id)?.word).toBe('clear');
    const clay = judged(on([ptv(0.083, { tool: 'clay' })]), id);
    expect(clay?.word).toBe('close');
    expect(clay?.sentence).toBe(
      'Piston to valve, 1 intake: .083 in ± .005, measured, against .080 in: close. It needs a closer reading: this one does not tell it from the limit.',
    );
  });

  test('two gauges are their bounds', () => {
    const between = ptv(0, { reading: { low: 0.084 * IN, high: 0.09 * IN }, tool: 'go-no-go' });
    expect(judged(on([between]), id)?.sentence).toMatch(
      /\.084 to \.090 in, measured, against \.080 in: clear/,
    );
  });

  test('on a hydraulic lifter it reads too large: no word unless it is short all the same', () => {
    const sinking = judged(on([ptv(0.12, { lifter: 'hydraulic' })]), id);
    expect(sinking?.word).toBeUndefined();
    expect(sinking?.sentence).toMatch(/no word yet\. It needs a reading on a solid or locked lifter/);
    expect(judged(on([ptv(0.05, { lifter: 'hydraulic' })]), id)?.word).toBe('short');
  });

  test('on the running spring the train bends by up to .040 on studs, trade practice 2.5', () => {
    expect(judged(on([ptv(0.11, { spring: 'running' })]), id)?.word).toBe('close');
    expect(judged(on([ptv(0.13, { spring: 'running' })]), id)?.word).toBe('clear');
  });
});
