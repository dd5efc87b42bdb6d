import { describe, expect, test } from 'vitest';
import { rulerOf } from '../../server/drawings/drawing.ts';
import { valveMargins } from '../../server/drawings/valve-margins.ts';
import { levelOf, pathsOf, textsOf } from './read-svg.ts';

/*
 * Heights are read off the markup and set against the numbers that went in: lengths on a drawing to scale are as the
 * lengths that they stand for (ISO 5455).
 */
const GIVEN = {
  installedHeight: 2.05,
  netLift: 0.831,
  solidHeight: 1.08,
  retainerToSeal: 0.95,
  piston: { lift: 0.2, gap: 0.103, atCrank: '17° after TDC', floor: 'pocket' },
  limits: { bind: 0.06, seal: 0.05, piston: 0.08 },
} as const;

const drawn = valveMargins(GIVEN, { id: 'd', ruler: rulerOf('inch') });
const moving = pathsOf(drawn.svg, 'draw-moving');
const numbers = (d: string) => (d.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
/** Of each station a retainer, a stem and a head, in this order. */
const retainers = moving.filter((_, index) => index % 3 === 0).map((d) => numbers(d)[3] ?? Number.NaN);
const heads = moving.filter((_, index) => index % 3 === 2).map(levelOf);
const [shut = 0, closest = 0, full = 0] = retainers;
const perInch = (full - shut) / GIVEN.netLift;

describe('the valve with its gaps', () => {
  test('names every part that it draws', () => {
    const names = textsOf(drawn.svg).map(({ text }) => text);
    for (const name of ['retainer', 'spring', 'seal', 'seat', 'valve', 'pocket in the piston'])
      expect(names, name).toContain(name);
    for (const limit of ['bind limit .060', 'seal limit .050', 'piston limit .080'])
      expect(names, limit).toContain(limit);
    const flat = valveMargins(
      { ...GIVEN, piston: { ...GIVEN.piston, floor: 'flat' } },
      { id: 'd', ruler: rulerOf('inch') },
    );
    expect(textsOf(flat.svg).map(({ text }) => text)).toContain('piston');
  });

  test('stands at one scale: lift, spring height, seal and piston', () => {
    expect((closest - shut) / perInch).toBeCloseTo(GIVEN.piston.lift, 2);
    const [seat = 0] = pathsOf(drawn.svg, 'draw-cut').map(levelOf);
    expect((seat - shut) / perInch).toBeCloseTo(GIVEN.installedHeight, 2);
    const seal = numbers(pathsOf(drawn.svg, 'draw-outline')[0] ?? '')[2] ?? 0;
    expect((seal - shut) / perInch).toBeCloseTo(GIVEN.retainerToSeal, 2);
    // The pocket's floor: M left wall, H, V floor.
    const pocket = pathsOf(drawn.svg, 'draw-cut').find((d) => numbers(d).length === 9) ?? '';
    expect(((numbers(pocket)[3] ?? 0) - (heads[1] ?? 0)) / perInch).toBeCloseTo(GIVEN.piston.gap, 2);
  });

  test('rules each limit as far from its part as it is', () => {
    const limits = pathsOf(drawn.svg, 'draw-limit').map(levelOf);
    const seat = levelOf(pathsOf(drawn.svg, 'draw-cut')[0] ?? '');
    const fromShut = limits.map((y) => (y - shut) / perInch);
    // Piston: .080 above its floor, which is .103 below the head; the head of the shut valve is the foot of the scale.
    expect(((limits[0] ?? 0) - (heads[1] ?? 0)) / perInch).toBeCloseTo(0.103 - 0.08, 2);
    // Bind: the spring is solid at 1.080, so the retainer may come to 2.050 − 1.080 − .060 = .910 below where it was.
    expect(fromShut[1]).toBeCloseTo(0.91, 2);
    // Seal: .950 − .050 = .900.
    expect(fromShut[2]).toBeCloseTo(0.9, 2);
    expect(seat).toBeGreaterThan(shut);
  });

  test('keeps every name inside the sheet and off the others', () => {
    const [, , width = 0, height = 0] = drawn.viewBox.split(' ').map(Number);
    // From memory: a letter of a usual sans is about .55 of its size wide; the letters of a drawing are 13 high.
    const boxes = textsOf(drawn.svg).map(({ text, at: [x, y], anchor }) => {
      const wide = text.length * 13 * 0.55;
      const left = anchor === 'middle' ? x - wide / 2 : anchor === 'end' ? x - wide : x;
      return { text, left, right: left + wide, top: y - 10, bottom: y + 2 };
    });
    for (const box of boxes) {
      expect(box.left, box.text).toBeGreaterThanOrEqual(0);
      expect(box.right, box.text).toBeLessThanOrEqual(width);
      expect(box.bottom, box.text).toBeLessThanOrEqual(height);
    }
    const clashes = boxes.flatMap((one, index) =>
      boxes
        .slice(index + 1)
        .filter(
          (other) =>
            one.left < other.right &&
            other.left < one.right &&
            one.top < other.bottom &&
            other.top < one.bottom,
        )
        .map((other) => `${one.text} / ${other.text}`),
    );
    expect(clashes).toEqual([]);
  });
});
