import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/cover-room.ts';
import { describeContract } from './helpers/bad-input.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, faults } = runner(computation);
const of = (coverBolting: string, width: number) => ({ coverBolting, assemblyWidth: inches(width) });
const verdict = (body: object) => partOf(run(body).result, 'verdict');

describe('room under the cover (widths and rule: common practice, no published source)', () => {
  test.each([
    ['through-centre', 1.2, 'clear'],
    ['through-centre', 1.25, 'clear'],
    ['through-centre', 1.2501, 'close'],
    ['through-centre', 1.4, 'close'],
    ['through-centre', 1.5499, 'close'],
    ['through-centre', 1.55, 'short'],
    ['through-centre', 1.6, 'short'],
    ['perimeter', 1.2, 'clear'],
    ['perimeter', 1.4, 'clear'],
    ['perimeter', 1.6, 'clear'],
  ])('%s, %d in wide: %s', (bolting, width, wanted) => {
    expect(verdict(of(bolting, width))).toBe(wanted);
  });

  test('in doubt, measuring the cover settles it; height is still to check whatever comes out', () => {
    expect(partOf(run(of('through-centre', 1.4)).result, 'settledBy')).toContain('measuring the cover');
    for (const width of [1.2, 1.4, 1.6]) {
      for (const bolting of ['perimeter', 'through-centre']) {
        const { result, cautions } = run(of(bolting, width));
        expect(partOf(result, 'settledBy')).toMatch(/height.*still to check/);
        expect(cautions.join()).toContain('Height is always still to check');
        expect(String(partOf(result, 'reason')).length).toBeGreaterThan(20);
      }
    }
  });

  test('limits of one’s own are used', () => {
    const limits = { narrowUpTo: inches(1.3), wideFrom: inches(1.35) };
    expect(verdict({ ...of('through-centre', 1.3), limits })).toBe('clear');
    expect(verdict({ ...of('through-centre', 1.35), limits })).toBe('short');
    expect(verdict({ ...of('through-centre', 1.32), limits })).toBe('close');
    expect(run({ ...of('through-centre', 1.32), limits }).assumptions.join()).not.toContain('default');
    expect(run(of('through-centre', 1.32)).assumptions.join()).toContain('default');
  });

  test('limits the wrong way round, half given or unknown are refused', () => {
    const limited = (limits: unknown) => faults({ ...of('perimeter', 1.2), limits });
    const both = ['/limits/narrowUpTo impossible-input', '/limits/wideFrom impossible-input'];
    expect(limited({ narrowUpTo: inches(1.5), wideFrom: inches(1.4) })).toEqual(both);
    expect(limited({ narrowUpTo: inches(1.4), wideFrom: inches(1.4) })).toEqual(both);
    expect(limited({ narrowUpTo: inches(1.4) })).toEqual(['/limits/wideFrom required']);
    expect(limited({ narrowUpTo: inches(1.4), wideFrom: inches(1.5), tall: 1 })).toEqual([
      '/limits/tall unknown-field',
    ]);
    expect(limited(7)).toEqual(['/limits not-allowed']);
  });

  test('a cover of another kind is refused', () => {
    expect(faults(of('glued', 1.2))).toEqual(['/coverBolting not-allowed']);
  });

  test('never better for being wider, the same in millimetres', () => {
    const rank = { clear: 0, close: 1, short: 2 };
    const place = (word: unknown) => Object.keys(rank).indexOf(String(word));
    const width = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(width, width, fc.constantFrom('perimeter', 'through-centre'), (one, other, bolting) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(place(verdict(of(bolting, more)))).toBeGreaterThanOrEqual(place(verdict(of(bolting, less))));
        expect(verdict({ coverBolting: bolting, assemblyWidth: mm(one * 25.4) })).toBe(
          verdict(of(bolting, one)),
        );
      }),
    );
  });
});

describeContract(computation, {
  body: of('through-centre', 1.4),
  quantities: { assemblyWidth: 'in' },
});
