import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, ScanEvidence, Side } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from './plain-build.ts';
import { type GapAt, pointsOf, scanEvidence, toThousandths } from './scan-evidence.ts';

/** .0005·(θ − 9)² over the least, every 2°: the worked example of the computation, turned round for an exhaust. */
const every2 = (least: number, valve: Side): GapAt[] =>
  [0, 2, 4, 6, 8, 10, 12, 14, 16, 18].map(
    (at): GapAt => [valve === 'intake' ? at : -at, least + 0.0005 * (at - 9) ** 2],
  );

let line = 100;
function scanOf(valve: Side, pairs: readonly GapAt[], more: Partial<ScanEvidence> = {}): ScanEvidence {
  line += 1;
  return scanEvidence(pointsOf(pairs, toThousandths), { id: `scan-${line}`, line, valve, ...more });
}

const build = (scans: readonly ScanEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  scans,
  ...more,
});
const gap = (evidence: Evidence, valve: Side = 'intake') =>
  assess(evidence).judgements.find(({ id }) => id === `gap:piston-to-valve:1-${valve}`);
const codes = (evidence: Evidence) =>
  assess(evidence)
    .questions.filter(({ step }) => step === 'scan')
    .map(({ code }) => code);

describe('the least of a scan is a gap like any other', () => {
  test('with its place, its interval no finer than the indicator, and its word', () => {
    const judged = gap(build([scanOf('intake', every2(0.09, 'intake'))]));
    expect(judged?.word).toBe('clear');
    // .080 is the default limit of an intake; an indicator on an engine is good to .002 (common practice, no source).
    expect(judged?.sentence).toBe(
      'Piston to valve, 1 intake: .090 in ± .002, measured in a scan at about 9° after TDC, at zero lash, against .080 in: clear.',
    );
  });

  test('the smaller of a scan and a gap taken in one place stands, whichever was entered last', () => {
    const scan = scanOf('intake', every2(0.09, 'intake'));
    const larger = read(1, 'intake', 'piston-to-valve', 0.12);
    const smaller = read(1, 'intake', 'piston-to-valve', 0.085);
    expect(gap(build([scan], { sheet: [larger] }))?.restsOn).toEqual([scan.id]);
    expect(gap(build([scan], { sheet: [smaller] }))?.restsOn).toEqual([smaller.id]);
  });

  test('of several scans the least decides until it is struck out', () => {
    const [one, two] = [scanOf('intake', every2(0.11, 'intake')), scanOf('intake', every2(0.07, 'intake'))];
    expect([gap(build([two, one]))?.word, gap(build([two, one]))?.restsOn]).toEqual(['short', [two.id]]);
    const stop = assess(build([two, one])).stop;
    expect(stop).toMatchObject([{ code: 'gap-short', restsOn: [two.id] }]);
    const struck = build([{ ...two, standing: false }, one]);
    expect([gap(struck)?.word, assess(struck).stop]).toEqual(['clear', []]);
  });
});

describe('what a scan was read under', () => {
  const clear = every2(0.12, 'intake');
  test.each([
    [
      'on a hydraulic lifter as it is',
      { lifter: 'hydraulic' },
      /a hydraulic one sinks, and this reads too large/,
    ],
    ['with the lash not said', { lash: 'not-said' }, /whether the lash was in it/],
    ['with lash in, how much not known', { lash: 'set' }, /the setting of the lash that was in it/],
  ] as const)('%s: no word yet', (_, more, needs) => {
    const judged = gap(build([scanOf('intake', clear, more)]));
    expect(judged?.word).toBeUndefined();
    expect(judged?.sentence).toMatch(needs);
  });

  test('lash that was in it is off the low end once, and is said', () => {
    const withLash = scanOf('intake', every2(0.095, 'intake'), { lash: 'set', lashSetting: 0.016 * IN });
    const judged = gap(build([withLash]));
    // .095 − .002 − .016 = .077 is under .080, .095 + .002 over it.
    expect(judged?.word).toBe('close');
    expect(judged?.sentence).toContain('.095 in (.077 to .097)');
    expect(judged?.lacks.join()).toContain('a scan at zero lash');
  });

  test('a least at the end is none: which way to go on, earlier or later', () => {
    const pairs = every2(0.12, 'intake');
    const late = gap(build([scanOf('intake', pairs.slice(6))]));
    expect([late?.word, late?.lacks.join()]).toEqual([
      undefined,
      expect.stringContaining('readings at earlier crank angles than 12° after TDC'),
    ]);
    const early = gap(build([scanOf('intake', pairs.slice(0, 4))]));
    expect(early?.lacks.join()).toContain('readings at later crank angles than 6° after TDC');
  });

  test('at an end and short already is short', () => {
    const judged = gap(build([scanOf('intake', every2(0.04, 'intake').slice(0, 4))]));
    expect(judged?.word).toBe('short');
  });

  test('steps of 9° beside the least are too wide for a word', () => {
    const wide: GapAt[] = [0, 9, 18].map((at): GapAt => [at, 0.12 + 0.0005 * (at - 9) ** 2]);
    expect(gap(build([scanOf('intake', wide)]))?.lacks.join()).toContain(
      'readings every 2° between TDC and 18° after TDC',
    );
  });

  test('between gauges alone there is no least; a gauge of the limit that does not go is short all the same', () => {
    const wire = (bounds: { low?: number; high?: number }) =>
      scanOf('intake', [], {
        tool: 'wire',
        points: [6, 10, 14].map((at) => ({ crankAngle: at * DEG, gap: bounds, readAs: 'a wire' })),
      });
    const over = gap(build([wire({ low: 0.08 * IN })]));
    expect([over?.word, over?.lacks.join()]).toEqual([
      undefined,
      expect.stringContaining('three crank angles'),
    ]);
    expect(gap(build([wire({ low: 0.06 * IN, high: 0.07 * IN })]))?.word).toBe('short');
  });

  test('a gauge that did not go under the curve bounds the least', () => {
    const scan = scanOf('intake', every2(0.09, 'intake'));
    const with10 = {
      ...scan,
      points: [
        ...scan.points,
        { crankAngle: 9 * DEG, gap: { low: 0.06 * IN, high: 0.07 * IN }, readAs: 'wires' },
      ],
    };
    expect(gap(build([with10]))?.word).toBe('short');
  });
});

describe('what a scan is asked', () => {
  test('nothing, where intake is after and exhaust before TDC', () => {
    expect(
      codes(build([scanOf('intake', every2(0.12, 'intake')), scanOf('exhaust', every2(0.14, 'exhaust'))])),
    ).toEqual([]);
  });

  // The piston stands at TDC and the valve alone moves, so that the least is past it on the side where the piston
  // follows the valve: from the geometry of the slider-crank, no table needed.
  test.each(['intake', 'exhaust'] as const)(
    'an %s whose angles were told on the other side of TDC',
    (valve) => {
      const flipped = every2(0.14, valve).map(([at, inches]): GapAt => [-at, inches]);
      const evidence = build([scanOf(valve, flipped)]);
      expect(codes(evidence)).toEqual(['scan-side-of-tdc']);
      expect(gap(evidence, valve)?.word).toBeUndefined();
      const [question] = assess(evidence).questions.filter(({ step }) => step === 'scan');
      const answers: Evidence['answers'] = [
        {
          id: 'answer-1',
          line: 500,
          code: question?.code ?? '',
          question: question?.ask ?? '',
          questionId: question?.id ?? '',
          answer: 'Looked: it does not fit',
          found: false,
        },
      ];
      expect(gap({ ...evidence, answers }, valve)?.word).toBe('clear');
    },
  );

  test('a least more than 25° from TDC', () => {
    const far: GapAt[] = [22, 24, 26, 28, 30, 32, 34, 36].map((at) => [at, 0.12 + 0.0005 * (at - 29) ** 2]);
    const evidence = build([scanOf('intake', far)]);
    expect(codes(evidence)).toEqual(['scan-far-from-tdc']);
    expect(gap(evidence)?.word).toBeUndefined();
  });

  test('a minus before a clay, which counts as contact until it is known', () => {
    const pairs = every2(0.12, 'intake').map(([at, inches]): GapAt => [at, at === 8 ? -0.005 : inches]);
    const evidence = build([scanOf('intake', pairs, { tool: 'clay' })]);
    expect(codes(evidence)).toEqual(['scan-below-nothing']);
    expect(gap(evidence)?.word).toBe('short');
    expect(assess(evidence).stop).toHaveLength(1);
  });

  test('one crank angle with two gaps that differ by more than the indicator errs', () => {
    const pairs: GapAt[] = [...every2(0.12, 'intake'), [14, 0.15]];
    expect(codes(build([scanOf('intake', pairs)]))).toEqual(['scan-angle-twice']);
    expect(codes(build([scanOf('intake', [...every2(0.12, 'intake'), [14, 0.133]])]))).toEqual([]);
  });
});

describe('the worst of two scans', () => {
  test('the less of two goes first, also where a sinking lifter tells only that the other is less than something', () => {
    // Falls to .096 at its last angle; the other is .125 on a lifter that sinks.
    const falling = scanOf(
      'intake',
      [0, 2, 4, 6, 8, 10].map((at): GapAt => [at, 0.106 - at / 1000]),
    );
    const sinking = scanOf('intake', every2(0.125, 'intake'), { lifter: 'hydraulic' });
    for (const scans of [
      [falling, sinking],
      [sinking, falling],
    ]) {
      const said = gap(build(scans))?.sentence;
      expect(said).toMatch(/\.09\d/);
      expect(said).not.toMatch(/\.12\d in/);
    }
  });
});
