import { describe, expect, test } from 'vitest';
import type { Evidence, PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import { answered, codesOf, inHand, partOf, seen, sized } from '../../mechanics/assessment/hand-part.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';

const assess = assessAsTold('part-fastener');

/*
 * Hole, pitch and diameter of what came out of it. Threads: ASME B1.1 and ISO 261; ten of them are 14.1 mm at 18 to the
 * inch, 10.6 at 24, 12.7 at 20, 12.5 at 1.25 mm, by arithmetic. Bands of a hole: common practice, no published source.
 */

const HOLE = 'hole-across-trunnion';
const hole = (...sizes: readonly number[]): PartEvidence[] => sizes.map((size) => sized(HOLE, size));

const ten = (millimetres: number, tool: 'caliper' | 'rule' = 'rule', count = 10): PartEvidence =>
  sized('stud-pitch', (millimetres * MM) / IN, {
    count,
    tool,
    id: `pitch-${count}-${millimetres}`,
    readAs: `${count} threads over ${millimetres} mm`,
  });

const over = (inches: number): PartEvidence => sized('stud-diameter', inches);

const headlineOf = (evidence: Evidence): string =>
  assess(evidence).headlines.find(({ id }) => id.endsWith(':fastener'))?.sentence ?? '';
const nextOf = (evidence: Evidence): string | undefined => assess(evidence).next?.action;
/** Read aloud over the phone in one go. */
const isShort = (sentence: string): boolean => sentence.split(/\s+/).length <= 25;

describe('two pitches that cannot both be right', () => {
  const both = inHand([ten(12.5), ten(10.6)]);

  test('make no figure of their mean: which is right is asked', () => {
    expect(codesOf(both)).toEqual(['two-sizes']);
    const said = JSON.stringify(assess(both));
    // 12.5 and 10.6 over ten are 1.155 mm in the middle: 22 to the inch, a thread that there is not.
    expect(said).not.toContain('22 to the inch');
    expect(headlineOf(both)).toMatch(/^No thread is named yet\. The pitches cannot both be right/);
    expect(partOf(assess(both)).stud?.pitch).toBeUndefined();
    expect(nextOf(both)).toBe('two-sizes');
  });

  test('either may be the one: only threads of one of the two are in reach', () => {
    const pitches = partOf(assess(both)).stud?.named ?? [];
    expect(pitches).toEqual(expect.arrayContaining(['M8×1.25', '3/8-24 UNF']));
    expect(pitches).not.toContain('5/16-18 UNC');
  });

  test('the answer leaves the one that is right', () => {
    const right = answered(both, 'two-sizes', 'largest');
    expect(partOf(assess(right)).stud?.named).toEqual(expect.arrayContaining(['M8×1.25']));
    expect(partOf(assess(right)).stud?.named).not.toContain('3/8-24 UNF');
    expect(partOf(assess(answered(both, 'two-sizes', 'found'))).stud).toBeUndefined();
  });

  test.each([
    ['18 and 20 to the inch by caliper', ten(14.11, 'caliper'), ten(12.7, 'caliper')],
    ['14 and 16 over eight threads', ten(14.51, 'caliper', 8), ten(12.7, 'caliper', 8)],
    ['24 to the inch and 1.25 mm, one of them over five', ten(5.29, 'caliper', 5), ten(12.5, 'caliper')],
  ])('%s are asked', (_, one, other) => {
    expect(codesOf(inHand([one, other]))).toEqual(['two-sizes']);
  });

  test('two readings of one thread are one, also by another tool', () => {
    const same = inHand([ten(12.5), ten(12.6), ten(12.48, 'caliper')]);
    expect(codesOf(same)).toEqual([]);
    // .0491 in ± .0002 by the caliper: not 20 to the inch any more.
    expect(partOf(assess(same)).stud?.named).toEqual(expect.arrayContaining(['M8×1.25']));
    expect(partOf(assess(same)).stud?.named).not.toContain('7/16-20 UNF');
  });

  test('two diameters of one stud are asked as well', () => {
    expect(codesOf(inHand([over(0.4335), over(0.3725)]))).toEqual(['two-sizes']);
    expect(codesOf(inHand([over(0.4335), over(0.431)]))).toEqual([]);
  });
});

describe('hole and pitch together', () => {
  test('.314 and ten threads in 12.5 mm are M8×1.25, and the pitch is not asked for again: playbook call 3', () => {
    const told = inHand([...hole(0.314, 0.3135), ten(12.5)]);
    expect(headlineOf(told)).toBe(
      'By hole and pitch it takes M8×1.25; the diameter over the thread proves it.',
    );
    const part = partOf(assess(told));
    expect(part.holes.map(({ ask }) => ask)).toEqual([undefined, undefined]);
    expect(part.holes.flatMap(({ threads }) => threads.map(({ designation }) => designation))).toEqual([
      'M8×1.25',
      'M8×1.25',
    ]);
    expect(part.stud?.named).toEqual(['M8×1.25']);
    expect(part.stud?.sentence).toMatch(/of its threads the hole takes M8×1\.25\.$/);
  });

  test.each([
    [0.314, 14.1, '5/16-18 UNC'],
    [0.3125, 10.6, '5/16-24 UNF'],
    [0.4355, 12.7, '7/16-20 UNF'],
    [0.374, 15.88, '3/8-16 UNC'],
  ])('a hole of %s and ten in %s mm: %s', (size, length, thread) => {
    expect(headlineOf(inHand([...hole(size), ten(length)]))).toContain(`it takes ${thread};`);
  });

  test('a diameter alone leaves the pitch to prove it', () => {
    const told = inHand([...hole(0.4355), over(0.4335)]);
    expect(headlineOf(told)).toBe(
      'By hole and diameter it takes 7/16-14 UNC or 7/16-20 UNF; its pitch proves it.',
    );
  });

  test('a pitch of no thread that the hole takes is asked about', () => {
    // 20 to the inch by caliper: 1/4, 7/16 and 1/2, none of them through a hole of .314.
    const told = inHand([...hole(0.314), ten(12.7, 'caliper')]);
    expect(codesOf(told)).toEqual(['stud-against-hole']);
    expect(headlineOf(told)).toMatch(/goes with no thread that the hole takes/);
    expect(partOf(assess(answered(told, 'stud-against-hole', 'found'))).stud).toBeUndefined();
  });
});

describe('a hole between sizes: trade practice 7, row 23', () => {
  test('.395 is no usual stud: that is said first, with what to do', () => {
    const told = inHand(hole(0.395));
    expect(codesOf(told)).toEqual(['hole-between-sizes']);
    expect(headlineOf(told)).toBe(
      'The hole reads 0.395 in, between 3/8 and 7/16: try the stud that came out, or a drill shank, through the hole by hand.',
    );
    expect(isShort(headlineOf(told))).toBe(true);
    expect(assess(told).next).toMatchObject({ action: 'hole-between-sizes', turns: false });
  });

  test.each([
    ['in doubt over 3/8', 0.384, /near 3\/8, and not on it/],
    ['over all of them', 0.46, /over 7\/16:/],
    ['under all of them', 0.28, /under 5\/16:/],
  ])('%s', (_, size, said) => {
    const told = inHand(hole(size, size + 0.0005));
    expect(codesOf(told)).toEqual(['hole-between-sizes']);
    expect(headlineOf(told)).toMatch(said);
  });

  test('what goes through it without play is named, and no word says that it agrees', () => {
    const told = answered(inHand(hole(0.384)), 'hole-between-sizes', 'goes-3-8');
    expect(headlineOf(told)).toBe(
      'A 3/8 stud goes through the hole without play: 3/8-16 UNC or 3/8-24 UNF; the thread proves it.',
    );
    expect(partOf(assess(told)).holes[0]?.word).toBe('cannot-tell');
    expect(nextOf(told)).not.toBe('hole-between-sizes');
    const more = { ...told, part: [...told.part, ...hole(0.3842)] };
    expect(codesOf(more).filter((code) => code === 'hole-between-sizes')).toHaveLength(1);
  });

  test('none goes: no usual stud is named', () => {
    const told = answered(inHand(hole(0.395)), 'hole-between-sizes', 'none');
    expect(headlineOf(told)).toBe('The hole, 0.395 in, takes no usual stud, as was tried by hand.');
    expect(partOf(assess(told)).holes[0]?.threads).toEqual([]);
  });

  test('a hole that no drilling makes of a stud’s is a shaft’s: the mount is looked at', () => {
    expect(codesOf(inHand(hole(0.78)))).toEqual([]);
    expect(headlineOf(inHand(hole(0.78)))).toMatch(/is no stud’s: look what holds the rocker/);
    expect(codesOf(inHand([...hole(0.395), seen('mount', 'shaft')]))).toEqual([]);
  });

  test('a hole that agrees, or was read with a rule, is not asked so', () => {
    expect(codesOf(inHand(hole(0.4355)))).toEqual([]);
    expect(codesOf(inHand([sized(HOLE, 0.395, { tool: 'rule' })]))).toEqual([]);
  });
});
