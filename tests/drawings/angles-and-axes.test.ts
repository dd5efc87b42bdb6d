import { describe, expect, test } from 'vitest';
import { adjusterTurned } from '../../server/drawings/adjuster-turned.ts';
import { rulerOf } from '../../server/drawings/drawing.ts';
import { linkageAsked } from '../../server/drawings/linkage-asked.ts';
import { perValve } from '../../server/drawings/per-valve.ts';
import { eta } from '../tools/render-parts.ts';
import { arcOf, circlesOf, directionOf, levelOf, pathsOf, textsOf } from './read-svg.ts';

const inch = { id: 'd', ruler: rulerOf('inch') };

describe('the linkage that is asked for', () => {
  const angles = { armAngle: 150, tipAngleClosed: 20, pushrodAngle: 10, lifterBoreAngle: 25 };
  const { svg } = linkageAsked('asked', angles);
  const [arm, tip, pushrod, bore] = pathsOf(svg, 'draw-dim').map(arcOf);
  const [, cup, lifter] = circlesOf(svg).filter(({ className }) => className === 'draw-outline');
  const pivot = circlesOf(svg).find(({ className }) => className === 'draw-moving');

  test('names its four angles, and draws four', () => {
    expect(textsOf(svg).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['arm angle', 'tip angle', 'pushrod angle', 'bore angle']),
    );
    expect(pathsOf(svg, 'draw-dim')).toHaveLength(4);
  });

  /*
   * The angle of an arc about its corner, by the directions of its ends; coordinates have two decimals. An arc about the
   * wrong corner would have other radii as well.
   */
  test.each([
    ['arm angle, over the top', arm, pivot, angles.armAngle],
    ['tip angle', tip, pivot, angles.tipAngleClosed],
    ['pushrod angle', pushrod, cup, angles.pushrodAngle],
    ['bore angle', bore, lifter, angles.lifterBoreAngle],
  ])('%s is as it was given', (_, arc, corner, degrees) => {
    if (arc === undefined || corner === undefined) throw new Error('there is no such arc');
    for (const end of [arc.from, arc.to])
      expect(Math.hypot(end[0] - corner.at[0], end[1] - corner.at[1])).toBeCloseTo(arc.r, 1);
    const turned = (directionOf(corner.at, arc.to) - directionOf(corner.at, arc.from) + 360) % 360;
    expect(turned).toBeCloseTo(degrees, 0);
  });
});

describe('an adjuster that is tightened', () => {
  const cases = (['stud-nut', 'cup-screw', 'valve-end-screw'] as const).flatMap((mount) =>
    (['hydraulic', 'solid'] as const).map((lifter) => [mount, lifter] as const),
  );

  test.each(cases)('%s, %s: no roller stands inside the stem', (mount, lifter) => {
    const { svg } = adjusterTurned({ mount, lifter }, inch);
    const stem = pathsOf(svg, 'draw-outline')[0] ?? '';
    // M left 230 V top H right V 230
    const top = (stem.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number)[2] ?? 0;
    const rollers = circlesOf(svg).filter(({ r }) => r === 18);
    expect(rollers.length > 0 || mount === 'valve-end-screw').toBe(true);
    for (const { at, r } of rollers) expect(at[1] + r).toBeLessThanOrEqual(top + 0.01);
  });

  test('on a solid lifter the roller comes down onto the stem', () => {
    const { svg } = adjusterTurned({ mount: 'stud-nut', lifter: 'solid' }, inch);
    const top = (pathsOf(svg, 'draw-outline')[0]?.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number)[2] ?? 0;
    const down = circlesOf(svg).find(({ r, className }) => r === 18 && className === 'draw-moving');
    expect((down?.at[1] ?? 0) + 18).toBeCloseTo(top, 1);
  });
});

describe('the bars of a sheet', () => {
  const drawn = perValve(
    {
      title: 'Valve lift',
      median: 0.847,
      oddBeyond: 0.008,
      bars: [0.847, 0.829].map((value, index) => ({ cylinder: index + 1, value, odd: index === 1 })),
    },
    inch,
  );

  test('stand on an axis with figures, and a bar ends where its figure is', () => {
    const rules = pathsOf(drawn.svg, 'draw-rule').map(levelOf);
    const figures = textsOf(drawn.svg).filter(
      ({ text, anchor }) => anchor === 'end' && /^[+−]?\.?\d/.test(text),
    );
    const values = figures.map(({ text }) => Number(text.replace('−', '-').replace('+', '')));
    expect(values.length).toBeGreaterThanOrEqual(3);
    expect(rules).toHaveLength(values.length);
    // By the axis alone: pixels for an inch from two of its figures, then the odd bar's length.
    const [first = 0, second = 1] = values;
    const perInch = ((rules[1] ?? 0) - (rules[0] ?? 0)) / (second - first);
    const [, from = 0, to = 0] =
      /M[-\d.]+ ([-\d.]+)V([-\d.]+)/.exec(pathsOf(drawn.svg, 'draw-cut')[0] ?? '')?.map(Number) ?? [];
    expect((to - from) / perInch).toBeCloseTo(-0.018, 3);
    expect(textsOf(drawn.svg).map(({ text }) => text)).toContain('off the median, in');
  });
});

describe('nominal ratios on their ruled line', () => {
  test.each([
    [[1.73, 1.74, 1.75, 1.76, 1.8]],
    [[1.5, 1.505, 1.51, 1.515, 1.52]],
    [[1.6, 1.6001]],
    [[1.5, 1.55, 1.6, 1.65, 1.7]],
  ])('%j: no two names touch, and none leaves the sheet', (nominals) => {
    const html = eta.render('/parts/scale', {
      id: 's',
      title: 'Ratio',
      desc: 'Nominal ratios',
      from: Math.min(...nominals),
      to: Math.max(...nominals),
      low: nominals[0],
      high: nominals.at(-1),
      value: nominals[0],
      marks: nominals.map((at) => ({ at, label: String(at) })),
    });
    const names = Array.from(
      html.matchAll(/class="scale-name" x="([-\d.]+)" y="([-\d.]+)"[^>]*>([^<]*)</g),
      ([, x, y, text = '']) => {
        // Letters of a bold sans are .6 of their 13 units wide; from memory.
        const half = (text.length * 13 * 0.6) / 2;
        return { y: Number(y), left: Number(x) - half, right: Number(x) + half };
      },
    );
    expect(names).toHaveLength(nominals.length);
    const [, top = 0] = /viewBox="([-\d.]+) ([-\d.]+)/.exec(html)?.slice(1).map(Number) ?? [];
    for (const [index, name] of names.entries()) {
      expect(name.left).toBeGreaterThanOrEqual(0);
      expect(name.right).toBeLessThanOrEqual(320);
      expect(name.y - 10).toBeGreaterThanOrEqual(top);
      for (const other of names.slice(index + 1).filter(({ y }) => y === name.y))
        expect(name.right <= other.left || other.right <= name.left).toBe(true);
    }
  });
});
