import { describe, expect, it } from 'vitest';
import { adjusterTurned } from '../../server/drawings/adjuster-turned.ts';
import { rulerOf } from '../../server/drawings/drawing.ts';
import { equalDrop } from '../../server/drawings/equal-drop.ts';
import { lashGap } from '../../server/drawings/lash-gap.ts';
import { leaningIndicator } from '../../server/drawings/leaning-indicator.ts';
import { positiveStop } from '../../server/drawings/positive-stop.ts';
import { threadLength } from '../../server/drawings/thread-length.ts';
import { stemEnd, tipMarks } from '../../server/drawings/tip-mark.ts';
import { tipMarkAsked } from '../../server/drawings/tip-mark-asked.ts';
import { wheelAtStop, wheelEvents } from '../../server/drawings/wheel-asked.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { eta } from '../tools/render-parts.ts';

const inch = (id: string) => ({ id, ruler: rulerOf('inch') });
const metric = (id: string) => ({ id, ruler: rulerOf('metric') });
const MOUNTS = ['stud-nut', 'cup-screw', 'valve-end-screw'] as const;

const neutral = [
  tipMarkAsked('tip'),
  positiveStop('stop'),
  wheelAtStop('at-stop'),
  wheelEvents('intake', 'intake'),
  wheelEvents('exhaust', 'exhaust'),
  equalDrop('drop'),
  lashGap({}, inch('lash')),
  ...MOUNTS.flatMap((mount) =>
    (['hydraulic', 'solid'] as const).map((lifter) =>
      adjusterTurned({ mount, lifter }, inch(`${mount}-${lifter}`)),
    ),
  ),
];

describe('a drawing that stands on a step before anything is read', () => {
  it.each(neutral)('$id has a title, words, no scale, and colours from classes alone', (data) => {
    const html = eta.render('/parts/drawing', data);
    expect(htmlFaults(html)).toEqual([]);
    expect(html).toContain('not to scale');
    expect(data.desc.length).toBeGreaterThan(60);
    expect(data.svg).not.toMatch(/style=|fill="|stroke="|NaN|undefined/);
    const [, , width = 0, height = 0] = data.viewBox.split(' ').map(Number);
    for (const [, x, y] of data.svg.matchAll(/<text[^>]* x="([-\d.]+)" y="([-\d.]+)"/g)) {
      expect(Number(x) >= 0 && Number(x) <= width && Number(y) >= 8 && Number(y) <= height, `${x} ${y}`).toBe(
        true,
      );
    }
    // A letter is about seven wide: a word that begins within the frame ends within it, too.
    for (const [, x, text = ''] of data.svg.matchAll(
      /<text[^>]* x="([-\d.]+)"[^>]* text-anchor="start">([^<]*)</g,
    ))
      expect(Number(x) + 7 * text.length, text).toBeLessThanOrEqual(width + 4);
  });
});

/** Where the corners of the inked mark lie across the stem. */
function acrossOf(svg: string): number[] {
  const d = /class="draw-moving draw-inked" d="M([^"]+)Z"/.exec(svg)?.[1] ?? '';
  return d.split('L').map((pair) => Number(pair.split(' ')[0]));
}

describe('a mark on the stem’s end', () => {
  it('is as wide, and as far from the middle, as its numbers say at the stem’s own scale', () => {
    const xs = acrossOf(stemEnd({ x: 100, y: 50, r: 40, width: 12, off: -10 }));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(12, 6);
    expect((Math.max(...xs) + Math.min(...xs)) / 2).toBeCloseTo(90, 6);
  });

  it('ends at the edge of the stem, and past it there is nothing to draw', () => {
    const xs = acrossOf(stemEnd({ x: 100, y: 50, r: 40, width: 30, off: 35 }));
    expect(Math.max(...xs)).toBe(140);
    expect(stemEnd({ x: 100, y: 50, r: 40, width: 4, off: 60 })).not.toContain('draw-inked');
  });

  it('whose middle was not measured is drawn off to its side, and it is said that nobody measured how far', () => {
    const mark = { name: '7.800', width: 0.11, sideways: false, farUnknown: true };
    const drawn = (off: number, where: string) =>
      tipMarks({ title: 'Marks', stem: 0.342, stemKnown: true, marks: [{ ...mark, off, where }] }, inch('m'));
    const middle = (svg: string) => (Math.max(...acrossOf(svg)) + Math.min(...acrossOf(svg))) / 2;
    const toExhaust = drawn(1, 'exhaust');
    expect(middle(toExhaust.svg)).toBeGreaterThan(170);
    expect(middle(drawn(-1, 'valley').svg)).toBeLessThan(150);
    expect(toExhaust.svg).toContain('not measured');
    expect(toExhaust.toScale).toBe(false);
    expect(toExhaust.table?.rows[0]?.cells).toContain('exhaust, how far: not measured');
  });

  it('says when the stem was not measured, and then is not to scale', () => {
    const marks = [{ name: '7.800', width: 0.05, off: 0.01, sideways: false, where: '.010 exhaust' }];
    const one = { title: 'Marks on 1 intake', stem: 0.342, marks };
    expect(tipMarks({ ...one, stemKnown: true }, inch('m')).toScale).toBe(true);
    const guessed = tipMarks({ ...one, stemKnown: false }, inch('m'));
    expect([guessed.toScale, guessed.caption]).toEqual([
      false,
      'Marks on 1 intake; the stem’s size was not said and is drawn as .342 in',
    ]);
  });
});

it('ten threads measure what the desk asks for on the phone', () => {
  // Trade practice, desk playbook call 3: ten threads 14.1 mm at 18 to the inch, 10.6 at 24, 12.5 at 1.25 mm.
  const ten = (pitch: number) =>
    Number(
      /ten threads ([\d.]+) mm/.exec(
        threadLength({ designation: 'x', pitch, majorMax: 0.31 }, metric('t')).svg,
      )?.[1],
    );
  expect([ten(1 / 18), ten(1 / 24), ten(1.25 / 25.4)].map((each) => Number(each.toFixed(1)))).toEqual([
    14.1, 10.6, 12.5,
  ]);
});

it.each([
  // 1/cos 10° and cos 10° in full: check values, section 2.
  ['flat-face', 1.01542661],
  ['carried-point', 0.98480775],
] as const)('%s: the thick stroke over the arrow is the reading over the motion', (contact, ratio) => {
  const { svg } = leaningIndicator({ tilt: 10, contact }, inch('c'));
  const [, x1 = 0, y1 = 0, x2 = 0, y2 = 0] =
    /class="draw-moving" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/.exec(svg)?.map(Number) ?? [];
  const arrow = /class="draw-dim" d="M[-\d.]+ ([-\d.]+)V([-\d.]+)"/.exec(svg)?.map(Number) ?? [];
  const motion = (arrow[1] ?? 0) - (arrow[2] ?? 0);
  // Coordinates have two decimals, so a stroke of 60 is true to about one in five thousand.
  expect(Math.hypot(x2 - x1, y2 - y1) / motion).toBeCloseTo(ratio, 3);
});
