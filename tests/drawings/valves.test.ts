import { describe, expect, test } from 'vitest';
import { rulerOf } from '../../server/drawings/drawing.ts';
import { perValve } from '../../server/drawings/per-valve.ts';
import { valveMargins } from '../../server/drawings/valve-margins.ts';
import { htmlFaults } from '../tools/html-faults.ts';

const FOR = { id: 'd', ruler: rulerOf('inch') };

// Every figure below is worked out by hand from the inputs beside it.
describe('bars per valve', () => {
  const bars = [0.56, 0.56, 0.54].map((value, index) => ({ cylinder: index + 1, value, odd: index === 2 }));

  test('a bar is as long as its valve is off: .010 half as long as .020, the other way', () => {
    const drawn = perValve(
      {
        title: 'Valve lift',
        median: 0.56,
        oddBeyond: 0.008,
        bars: [
          { cylinder: 1, value: 0.57, odd: false },
          { cylinder: 2, value: 0.54, odd: true },
        ],
      },
      FOR,
    );
    const heights = Array.from(
      drawn.svg.matchAll(/class="draw-(?:solid|cut)" d="M[\d.]+ ([\d.]+)V([\d.]+)/g),
      ([, from, to]) => Number(to) - Number(from),
    );
    expect((heights[0] ?? 0) / (heights[1] ?? 1)).toBeCloseTo(-0.5, 2);
    expect(drawn.svg).toContain('>−.020</text>');
    // Letters of 12 on the sheet: two lines of them are that far apart at the least.
    const lineOf = (text: string) => Number(new RegExp(` y="([\\d.]+)"[^>]*>${text}<`).exec(drawn.svg)?.[1]);
    expect(lineOf('2') - lineOf('−.020')).toBeGreaterThanOrEqual(14);
  });

  test('the odd one is in the words, and a reading between gauges has no bar of its own', () => {
    const drawn = perValve(
      {
        title: 'Valve lift',
        median: 0.56,
        oddBeyond: 0.008,
        bars: [...bars, { cylinder: 4, low: 0.55, odd: false }],
      },
      FOR,
    );
    expect(drawn.desc).toContain('Odd: 3 at .540 in');
    expect(drawn.table?.rows.at(-1)?.cells).toEqual(['4', 'over .550', '']);
    expect(htmlFaults(`<svg>${drawn.svg}</svg>`)).toEqual([]);
  });
});

describe('one valve, to scale', () => {
  test('each gap is dimensioned with what is left: 1.900 − .560 − 1.150 and .650 − .560', () => {
    const drawn = valveMargins(
      {
        installedHeight: 1.9,
        netLift: 0.56,
        solidHeight: 1.15,
        retainerToSeal: 0.65,
        piston: { lift: 0.1, gap: 0.09, atCrank: '9° after TDC' },
      },
      FOR,
    );
    expect(drawn.table?.rows.map((row) => row.cells)).toEqual([
      ['Net lift', '.560'],
      ['To coil bind, full lift', '.190'],
      ['Retainer to seal, full lift', '.090'],
      ['Piston to valve, 9° after TDC', '.090'],
    ]);
    expect(drawn.svg).toContain('>.190</text>');
    expect(htmlFaults(`<svg>${drawn.svg}</svg>`)).toEqual([]);
  });

  test('what is not known is left out, and overlap is drawn below zero', () => {
    const drawn = valveMargins({ installedHeight: 1.9, netLift: 0.8, solidHeight: 1.15 }, FOR);
    expect(drawn.svg).toContain('>−.050</text>');
    expect(drawn.desc).not.toMatch(/seal|piston/);
  });
});
