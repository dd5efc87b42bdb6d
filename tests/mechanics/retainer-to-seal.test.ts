import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/retainer-to-seal.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const body = { closedDistance: inches(0.65), netLift: inches(0.56) };
const verdict = (more: object) => partOf(run({ ...body, ...more }).result, 'verdict');

describe('retainer to seal', () => {
  test('.650 − .560 = .090 in (by hand), against .050 in (common practice, no published source)', () => {
    expectNear(number(body, 'margin'), 0.09);
    expectNear(number(body, 'limit'), 0.05);
    expect(verdict({})).toBe('clear');
  });

  test.each([
    [0.09, 0, 'clear'],
    [0.091, 0, 'short'],
    [0.091, 0.001, 'close'],
    [0.05, 0.041, 'close'],
    [0.05, 0.04, 'clear'],
  ])('.090 in against %d ± %d in is %s', (limit, uncertainty, wanted) => {
    expect(verdict({ limit: inches(limit), uncertainty: inches(uncertainty) })).toBe(wanted);
  });

  test('a retainer that would crush the seal leaves a negative margin, a touching one zero at the seat', () => {
    expectNear(number({ ...body, netLift: inches(0.7) }, 'margin'), -0.05);
    expectNear(number({ ...body, closedDistance: inches(0) }, 'margin'), -0.56);
    expect(verdict({ netLift: inches(0.7) })).toBe('short');
  });

  test('a lift of zero or less can’t be', () => {
    expect(faults({ ...body, netLift: inches(0) })).toEqual(['/netLift impossible-input']);
  });

  test('millimetres and inches agree, and the verdict with them', () => {
    const part = fc.double({ min: 0.001, max: 2, noNaN: true });
    fc.assert(
      fc.property(part, part, part, (closed, lift, limit) => {
        const inInches = { closedDistance: inches(closed), netLift: inches(lift), limit: inches(limit) };
        const inMm = { closedDistance: mm(closed * 25.4), netLift: mm(lift * 25.4), limit: mm(limit * 25.4) };
        const margin = number(inMm, 'margin', 'metric');
        expect(margin / 25.4 + lift).toBeCloseTo(closed, 12);
        expect(number(inInches, 'margin') * 25.4).toBeCloseTo(margin, 11);
        if (Math.abs(closed - lift - limit) > 1e-8) {
          const wanted = closed - lift > limit ? 'clear' : 'short';
          expect(partOf(run(inInches).result, 'verdict')).toBe(wanted);
          expect(partOf(run(inMm).result, 'verdict')).toBe(wanted);
        }
      }),
    );
  });
});

describeContract(computation, {
  body: { ...body, limit: inches(0.05), uncertainty: inches(0.01) },
  quantities: { closedDistance: 'in', netLift: 'in', limit: 'in', uncertainty: 'in' },
  optional: ['limit', 'uncertainty'],
  impossibleBelow: ['netLift'],
});
