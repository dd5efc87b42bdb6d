import { describe, expect, it } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { answerParts } from '../../server/compute-forms/answer/answer-parts.ts';
import { headlineOf } from '../../server/compute-forms/answer/headline.ts';
import { speaking } from '../../shared/quantities/spoken-units.ts';
import { UNITS } from '../../shared/quantities/units.ts';

/*
 * The answer in one line of every computation. How many digits a figure bears: JCGM 100 (GUM), 7.2.6: two significant
 * digits of the uncertainty are enough, and the figure ends where they end. Four digits where nothing is said of the
 * uncertainty: common practice, no source.
 */
const computations = [...(await loadComputations()).values()];
const answers = computations.flatMap((each) =>
  (['inch', 'metric'] as const).map((units) => ({ name: each.name, each, units })),
);

const headline = ({ each, units }: (typeof answers)[number], inputs: unknown = each.example.inputs) =>
  speaking(units, () => {
    const { scalars } = answerParts(each.output, each.run(inputs, units).result);
    return { scalars, told: headlineOf(each, inputs, scalars) };
  });

const decimalsOf = (figure: string): number => figure.split('.')[1]?.length ?? 0;
const digitsOf = (figure: string): number => figure.replace(/[^0-9]/g, '').replace(/^0+/, '').length;

describe.each(answers)('$name in $units', (answer) => {
  const { told, scalars } = headline(answer);

  it('is one of the outputs that it has', () => {
    expect(scalars.map(({ name }) => name)).toContain(told?.of.name);
  });

  it('has digits no finer than its uncertainty, or four', () => {
    const figure = told?.figure ?? '';
    // Words have no digits to count.
    if (!/^[+−]?[\d.]+$/.test(figure)) return expect(figure).not.toMatch(/\.\d{5,}/);
    if (told?.spread !== undefined) {
      expect(decimalsOf(figure)).toBe(decimalsOf(told.spread));
      return expect(digitsOf(told.spread)).toBeLessThanOrEqual(2);
    }
    expect(decimalsOf(figure)).toBeLessThanOrEqual(4);
    const isLength = told?.unit === 'in' || told?.unit === 'mm';
    // A wheel is read in parts of a degree, whatever stands before the point.
    if (told?.unit === 'deg' && Number(figure) >= 100)
      return expect(decimalsOf(figure)).toBeLessThanOrEqual(2);
    if (!isLength) expect(digitsOf(figure.replace(/0+$/, ''))).toBeLessThanOrEqual(4);
  });

  it('says its unit where it is a quantity', () => {
    const value = told?.of.value;
    const isQuantity = typeof value === 'object' && value !== null && 'unit' in value;
    expect(told?.unit !== undefined).toBe(isQuantity);
    if (told?.unit !== undefined) expect(Object.keys(UNITS)).toContain(told.unit.split(' ')[0]);
  });
});

describe('what the answer is', () => {
  const of = (name: string, inputs?: unknown) => {
    const each = computations.find((known) => known.name === name);
    if (each === undefined) throw new Error(`no computation ${name}`);
    return headline({ name, each, units: 'inch' }, inputs ?? each.example.inputs).told?.figure;
  };

  it('of a hole, a thread', () => {
    // ASME B1.1: 7/16 is .4375 across; 14 threads to the inch is coarse, 20 fine.
    expect(of('fastener-for-hole', { hole: '.4370 in' })).toBe('7/16-14 UNC or 7/16-20 UNF');
    expect(of('fastener-for-hole', { hole: '.900 in' })).toBe('none of the usual threads');
  });

  it('of a control chart, whether anything calls for a look', () => {
    expect(of('control-chart')).toBe('no signal');
    // Twenty points near 10 and one at 20: past three sigma of the moving range by any reading of it.
    const individuals = [...Array.from({ length: 20 }, (_, index) => 10 + (index % 2) * 0.2), 20];
    expect(of('control-chart', { chart: 'individuals', individuals })).toMatch(
      /^(a signal at|signals at \d+) points?/,
    );
  });

  it('of values, the one that stands out', () => {
    // NIST/SEMATECH e-Handbook, 1.3.5.17.1: 245.57 is the outlier of its example.
    expect(of('outliers')).toBe('245.57 stands out, number 8 of the list');
    expect(of('outliers', { values: [1, 1.1, 1.2, 1.1, 1], method: 'grubbs' })).toBe('none stands out');
  });

  it('of an adjuster, turns where a preload is wanted, and the preload where turns are given', () => {
    const common = { thread: '7/16-20', ratio: 1.5, mount: 'stud-nut', lifter: 'hydraulic' };
    // 20 to the inch is .050 a turn; at 1.5 the cup goes 1 + 1/1.5 = 1.6667 times that: .0833 a turn, .0417 the half.
    expect(of('adjuster', { ...common, turns: 0.5 })).toBe('.0417');
    expect(Number(of('adjuster', { ...common, preloadWanted: '.0417 in' }))).toBeCloseTo(0.5, 2);
  });
});
