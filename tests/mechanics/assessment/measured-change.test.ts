import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { geared } from './geared.ts';
import { read } from './plain-build.ts';

/* An overhead cam has no one ratio that makes its gaps: general knowledge, from memory. */

const of = (gear: 'bucket' | 'finger-follower' | 'cam-rocker', sheet: readonly SheetEvidence[] = []) => {
  const evidence = geared(gear, { sheet, card: { intake: {}, exhaust: {} }, rockers: {} });
  return assess({ ...evidence, call: { ...evidence.call, goal: 'choose-ratio', engineState: 'apart' } });
};

describe.each(['bucket', 'finger-follower', 'cam-rocker'] as const)('another cam on a %s', (gear) => {
  test('asks for the gaps that are to be measured, and for nothing that is not worked with', () => {
    const { next, missing } = of(gear);
    expect(next?.sentence).toMatch(/^Measure room to coil bind of an intake and an exhaust on this engine/);
    const must = missing.filter((each) => each.must && each.step !== 'notes').map(({ id }) => id);
    expect(must.filter((id) => !id.startsWith('missing:triage'))).toEqual([
      'missing:sheet:measured-coil-bind',
      'missing:sheet:measured-retainer-to-seal',
      'missing:sheet:measured-piston-to-valve',
    ]);
  });

  test('one side read leaves the other', () => {
    const sheet = [read(1, 'intake', 'coil-bind', 0.1)];
    expect(of(gear, sheet).next?.sentence).toMatch(/^Measure room to coil bind of an exhaust on this/);
  });
});
