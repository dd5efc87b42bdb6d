import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { drawingsOf } from '../../server/drawings/registry.ts';
import { memberOf } from '../../shared/member.ts';

const each = (await loadComputations()).get('piston-to-valve');
if (each === undefined) throw new Error('piston-to-valve is missing');
const computation = each;

const engine = {
  stroke: '3.48 in',
  rodLength: '5.7 in',
  valveAngle: '23 deg',
  floor: 'pocket',
  closedGapAtTdc: '.42 in',
  side: 'intake',
  profile: {
    lobeLift: '.35 in',
    centreline: '106 deg',
    durations: [{ atLift: '.05 in', duration: '230 deg' }],
  },
  ratio: 1.6,
};

const schemaOfResult = (inputs: object) => {
  const result = computation.run(inputs, 'inch').result;
  const margin = memberOf(result, 'margin');
  const value = memberOf(margin, 'value');
  if (typeof value !== 'number') throw new Error('no margin');
  return { result, margin: value };
};

function draw(inputs: object) {
  const { result, margin } = schemaOfResult(inputs);
  const [drawing] = drawingsOf(computation, inputs, result, 'inch');
  if (drawing === undefined) throw new Error('no drawing');
  return { drawing, margin };
}

describe('valve and piston over the crank', () => {
  it('marks the least gap with the figure of the answer, and draws the limit under the valve', () => {
    const { drawing, margin } = draw(engine);
    const figure = margin.toFixed(4).replace(/^0/, '').replace(/0$/, '');
    expect(drawing.svg).toContain(`least ${figure} in`);
    expect(drawing.svg).toContain('limit .080 in below the valve');
    expect(drawing.svg).toContain('class="draw-limit"');
  });

  it('has the gap of its table as piston less valve, to the last place shown', () => {
    const { drawing } = draw(engine);
    for (const row of drawing.table?.rows ?? []) {
      const [, valve, piston, gap] = row.cells.map((cell) => Number(String(cell).replace('−', '-')));
      expect(Math.abs((piston ?? 0) - (valve ?? 0) - (gap ?? 1))).toBeLessThan(2e-4);
    }
  });

  it('the gap drawn at the least place is as long as the scale says', () => {
    const { drawing, margin } = draw(engine);
    const gap = /class="draw-gap" d="M[\d.]+ ([\d.]+)V([\d.]+)"/.exec(drawing.svg);
    const ticks = Array.from(drawing.svg.matchAll(/text-anchor="end"[^>]*>([.\d]+)<\/text>/g), ([, text]) =>
      Number(text),
    );
    expect(ticks.length).toBeGreaterThan(2);
    const rules = /class="draw-rule" d="([^"]+)"/.exec(drawing.svg)?.[1] ?? '';
    const heights = Array.from(rules.matchAll(/M[\d.]+ ([\d.]+)H/g), ([, y]) => Number(y));
    const [first = 0, second = 0] = heights;
    const step = (ticks[1] ?? 0) - (ticks[0] ?? 0);
    const perInch = Math.abs(second - first) / step;
    expect((Number(gap?.[2]) - Number(gap?.[1])) / perInch).toBeCloseTo(margin, 2);
  });

  it('is drawn for any cam and any gap, below zero too', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 90, max: 120, noNaN: true }),
        fc.double({ min: 180, max: 320, noNaN: true }),
        fc.constantFrom('intake', 'exhaust'),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (gap, centre, duration, side, advance) => {
          const { drawing } = draw({
            ...engine,
            side,
            closedGapAtTdc: { value: gap, unit: 'in' },
            advance: { value: advance, unit: 'deg' },
            profile: {
              lobeLift: '.35 in',
              centreline: { value: centre, unit: 'deg' },
              durations: [{ atLift: '.05 in', duration: { value: duration, unit: 'deg' } }],
            },
          });
          expect(drawing.svg).not.toMatch(/NaN|Infinity/);
        },
      ),
      { numRuns: 60 },
    );
  });
});
