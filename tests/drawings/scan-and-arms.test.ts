import { describe, expect, it } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { drawingsOf } from '../../server/drawings/registry.ts';

const computations = await loadComputations();

function drawn(name: string, inputs: object) {
  const each = computations.get(name);
  if (each === undefined) throw new Error(`no computation ${name}`);
  return drawingsOf(each, inputs, each.run(inputs, 'inch').result, 'inch');
}

function one(name: string, inputs: object) {
  const [first] = drawn(name, inputs);
  if (first === undefined) throw new Error(`no drawing of ${name}`);
  return first;
}

const scan = (pairs: readonly (readonly [number, number])[]) => ({
  readings: pairs.map(([at, gap]) => ({ crankAngle: `${at} deg`, gap: `${gap} in` })),
  limit: '.08 in',
});

type Place = readonly [number, number];

const placesIn = (d: string): Place[] =>
  Array.from(d.matchAll(/[ML]([-\d.]+)[ ,]([-\d.]+)/g), ([, x, y]): Place => [Number(x), Number(y)]);

const circlesIn = (svg: string): Place[] =>
  Array.from(
    svg.matchAll(/<circle class="draw-outline" cx="([-\d.]+)" cy="([-\d.]+)"/g),
    ([, x, y]): Place => [Number(x), Number(y)],
  );

describe('a scan over the crank', () => {
  const uneven = scan([
    [4, 0.1025],
    [-3, 0.162],
    [8, 0.0905],
    [15, 0.108],
  ]);

  it('its parabola runs through the three readings about the least, and its point is the lowest of it', () => {
    const { svg } = one('gap-scan', uneven);
    const parabola = placesIn(/<path class="draw-moving" d="([^"]+)"/.exec(svg)?.[1] ?? '');
    const readings = circlesIn(svg);
    expect(readings).toHaveLength(4);
    // In order of the crank: 4°, 8° and 15° are the last three. The curve's own points stand a fortieth apart.
    const [, before, middle, after] = readings;
    const distance = ([x, y]: Place, to: Place = [0, 0]) => Math.hypot(x - to[0], y - to[1]);
    expect(distance(parabola[0] ?? [0, 0], before)).toBeLessThan(0.1);
    expect(distance(parabola.at(-1) ?? [0, 0], after)).toBeLessThan(0.1);
    expect(Math.min(...parabola.map((each) => distance(each, middle)))).toBeLessThan(2.5);
    const [, x, y] = /<circle class="draw-point" cx="([\d.]+)" cy="([\d.]+)"/.exec(svg) ?? [];
    expect(Math.max(...parabola.map(([, each]) => each))).toBeCloseTo(Number(y), 0);
    expect(Math.min(...parabola.map((each) => distance(each, [Number(x), Number(y)])))).toBeLessThan(2.5);
  });

  it('the limit lies as far under the readings as the scale says', () => {
    const { svg, desc } = one('gap-scan', uneven);
    const limit = Number(/<path class="draw-limit" d="M[\d.]+ ([\d.]+)H/.exec(svg)?.[1]);
    const [first, second] = circlesIn(svg);
    // .162 and .1025 are .0595 apart, .1025 and the limit .0225.
    const scale = ((second?.[1] ?? 0) - (first?.[1] ?? 0)) / 0.0595;
    expect((limit - (second?.[1] ?? 0)) / scale).toBeCloseTo(0.0225, 3);
    expect(desc).toContain('The limit is .080 in');
  });

  it('at an end nothing is fitted and no parabola drawn', () => {
    const { svg } = one(
      'gap-scan',
      scan([
        [4, 0.09],
        [8, 0.1],
        [12, 0.12],
      ]),
    );
    expect(svg).not.toContain('draw-moving');
    expect(svg).toContain('draw-point');
  });

  it('readings all alike, at the bounds of what is taken, and steps that no wheel has are drawn too', () => {
    for (const pairs of [
      [
        [0, 0],
        [2, 0],
        [4, 0],
      ],
      [
        [-1440, 100],
        [0, 0],
        [1440, 100],
      ],
      [
        [9.99, 0.2],
        [10, 0.1],
        [1440, 0.1001],
      ],
    ] as const) {
      expect(one('gap-scan', scan(pairs)).svg).not.toMatch(/NaN|Infinity/);
    }
  });
});

describe('a deflection', () => {
  it('stands on the scale of the usual band, left of zero where the running spring reads more', () => {
    const lifts = (running: string) => ({ lightLift: '.56 in', runningLift: running, mount: 'shaft' });
    const point = (svg: string) => Number(/<circle class="draw-point" cx="([\d.]+)"/.exec(svg)?.[1]);
    const band = /<path class="draw-cut" d="M([\d.]+) 46H([\d.]+)V/;
    // .0125 is half way from .005 to .020.
    const { svg } = one('deflection', lifts('.5475 in'));
    const [, from, to] = band.exec(svg) ?? [];
    expect((point(svg) - Number(from)) / (Number(to) - Number(from))).toBeCloseTo(0.5, 2);
    const swapped = one('deflection', lifts('.58 in')).svg;
    expect(point(swapped)).toBeLessThan(Number(band.exec(swapped)?.[1]));
  });

  it('without a mount there is no band and no drawing', () => {
    expect(drawn('deflection', { lightLift: '.56 in', runningLift: '.55 in' })).toEqual([]);
  });
});

it('two arms are to scale: 1.480 and .925 as their dimension lines', () => {
  const { svg } = one('arm-lengths', {
    pivotToTip: { value: '1.48 in', errorLimit: '.005 in' },
    pivotToCup: { value: '.925 in', errorLimit: '.005 in' },
  });
  const [tip = 0, cup = 1] = Array.from(
    svg.matchAll(/<path class="draw-dim" d="M([\d.]+) [\d.]+H([\d.]+)" marker-start/g),
    ([, from, to]) => Number(to) - Number(from),
  );
  expect(tip / cup).toBeCloseTo(1.6, 3);
});

it('a nest whose first to go solid has a height of its own is drawn at that height', () => {
  const of = (solidHeight: string, more: object = {}) => ({
    rate: '280 lbf/in',
    freeLength: '2.2 in',
    solidHeight,
    ...more,
  });
  const drawing = one('spring-nest', {
    springs: [of('1.05 in'), of('1.05 in', { installedHeight: '1.72 in' })],
    installedHeight: '1.8 in',
    netLift: '.5 in',
  });
  expect(drawing.desc).toContain('Installed 1.720 in, open 1.220 in, solid 1.050 in: .170 in is left');
});
