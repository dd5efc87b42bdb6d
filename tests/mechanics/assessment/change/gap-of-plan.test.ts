import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { answered, heard } from '../whole-sheet.ts';
import { CHANGE, gapOf } from './change-of-arms.ts';

/* Sold as 1.5, 1.6 planned; piston to valve read .130 with the arms before, .119 once more. Figures invented. */
const BUILD: Evidence = { ...CHANGE, engine: { ...CHANGE.engine, lifter: 'hydraulic-flat' }, springs: {} };
const before = gapOf('before', 'piston-to-valve', 0.13, { arms: 'before', tool: 'indicator' });
const these = gapOf('these', 'piston-to-valve', 0.119, { tool: 'indicator' });
const both = { ...BUILD, sheet: [before, these] };

const withPlan = (evidence: Evidence) =>
  heard(evidence)
    .all.details.change.find(({ key }) => key === '1-intake')
    ?.gaps.find(({ name }) => name === 'piston-to-valve')?.after;
const inThousandths = (metres = 0) => Math.round((metres / 0.0254) * 1000);

describe('a gap that was read with the arms before, and once more with others', () => {
  test('is asked whether the planned ones were on, and nothing is asked of one reading', () => {
    expect(heard(both).asks).toContain('gap-arms-then');
    expect(heard({ ...BUILD, sheet: [these] }).asks).not.toContain('gap-arms-then');
    expect(heard({ ...BUILD, sheet: [before] }).asks).not.toContain('gap-arms-then');
  });

  test('they were: it is the gap with the plan, as it was read', () => {
    const after = withPlan(answered(both, 'gap-arms-then', 'planned', 90));
    expect([after?.basis, inThousandths(after?.value)]).toEqual(['measured', 119]);
  });

  test('they were not: what it leaves is worked out, .119 less .120 times .1', () => {
    const after = withPlan(answered(both, 'gap-arms-then', 'old', 90));
    expect([after?.basis, inThousandths(after?.value)]).toEqual(['calculated', 107]);
  });
});
