import { describe, expect, test } from 'vitest';
import type { PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { answered, codesOf, firstOf, inHand, partOf, SORREL, seen, sized, without } from './hand-part.ts';

const assess = assessAsTold('part-doubts');

/* Confusions of trade practice, section 7, rows 5, 6 and 22, on a part in the hand. The part is invented. */

const SORREL_CODE = 'DEMO-SOR-160-B';
const asRead = firstOf(inHand(SORREL));
const MM: Partial<PartEvidence> = { unit: 'mm' };

describe('a size that cannot be', () => {
  const slipped = inHand([...without('roller-diameter'), sized('roller-diameter', 4.96)]);

  test('is said to be impossible, waits, and does not count', () => {
    const assessment = assess(slipped);
    const question = assessment.questions.find(({ code }) => code === 'size-impossible');
    expect(question?.ask).toMatch(
      /Roller diameter of 4\.96 in cannot be: rockers have \.200 in to 1\.200 in/,
    );
    expect(question?.answers.map(({ code }) => code)).toEqual(['dot-left', 'found', 'not-found']);
    const waits = partOf(assessment).readings.filter(({ counts }) => counts === 'waits');
    expect(waits.map(({ entryId }) => entryId)).toEqual(['roller-diameter-4.96']);
    expect(firstOf(slipped)).toEqual(firstOf(inHand(without('roller-diameter'))));
    expect(assessment.next).toMatchObject({ action: 'size-impossible', turns: false });
  });

  test('counts as what was meant once that is answered, to the figure as if it had been read so', () => {
    const [code, chance] = firstOf(answered(slipped, 'size-impossible', 'dot-left'));
    expect(code).toBe(SORREL_CODE);
    expect(chance).toBeCloseTo(asRead[1], 9);
    const said = partOf(assess(answered(slipped, 'size-impossible', 'dot-left'))).readings;
    expect(said.find(({ entryId }) => entryId === 'roller-diameter-4.96')?.said).toBe('meant as .496 in');
  });

  test('counts as it was read where it was read again, and then it stands alone', () => {
    const again = answered(slipped, 'size-impossible', 'not-found');
    expect(codesOf(again)).toContain('reading-stands-alone');
    expect(firstOf(again)[0]).toBe('held back');
    const [code, none] = firstOf(answered(again, 'reading-stands-alone', 'not-found'));
    expect(code).toBe('none');
    expect(none).toBeGreaterThan(0.9);
  });

  test.each([
    ['millimetres typed as inches', sized('pivot-to-tip', 36.9), 'millimetres'],
    ['inches typed as millimetres', sized('pivot-to-tip', 1.453 / 25.4, MM), 'inches'],
    ['a dot too far left', sized('pivot-to-tip', 0.1453), 'dot-right'],
  ] as const)('%s', (_, reading, answer) => {
    const evidence = inHand([...without('pivot-to-tip'), reading]);
    const [code, chance] = firstOf(answered(evidence, 'size-impossible', answer));
    expect(code).toBe(SORREL_CODE);
    expect(Math.abs(chance - asRead[1])).toBeLessThan(0.01);
  });

  test('“mil” is put back: what the place allows was kept, and a no takes it out', () => {
    const typed = sized('pivot-to-tip', 1.453, { typed: '36.9 mil', unit: 'mm' });
    const evidence = inHand([...without('pivot-to-tip'), typed]);
    expect(codesOf(evidence)).toEqual(['mil-said']);
    expect(firstOf(evidence)[1]).toBeCloseTo(asRead[1], 9);
    const no = answered(evidence, 'mil-said', 'found');
    expect(firstOf(no)).toEqual(firstOf(inHand(without('pivot-to-tip'))));
  });
});

describe('two sizes under each other’s name', () => {
  const swapped = inHand([
    ...SORREL.filter(({ kind }) => kind !== 'body-width' && kind !== 'hole-across-trunnion'),
    sized('hole-across-trunnion', 0.841),
    sized('body-width', 0.4355),
  ]);

  test('a hole larger than the body is asked, and neither counts before', () => {
    expect(codesOf(swapped)).toContain('sizes-swapped');
    const waits = partOf(assess(swapped)).readings.filter(({ counts }) => counts === 'waits');
    expect(waits.map(({ entryId }) => entryId).sort()).toEqual([
      'body-width-0.4355',
      'hole-across-trunnion-0.841',
    ]);
  });

  test('once answered each counts as the other', () => {
    const straight = inHand([
      ...SORREL.filter(({ kind }) => kind !== 'hole-across-trunnion'),
      sized('hole-across-trunnion', 0.4355),
    ]);
    const [code, chance] = firstOf(answered(swapped, 'sizes-swapped', 'swapped'));
    expect(code).toBe(SORREL_CODE);
    expect(chance).toBeCloseTo(firstOf(straight)[1], 9);
    expect(partOf(assess(answered(swapped, 'sizes-swapped', 'swapped'))).holes[0]?.word).toBe('agrees');
  });

  test('the answer holds for these two when more is read, and the question stays answered', () => {
    const settled = answered(swapped, 'sizes-swapped', 'swapped');
    const more = { ...settled, part: [...settled.part, sized('hole-across-trunnion', 0.4362)] };
    expect(firstOf(more)[0]).toBe(SORREL_CODE);
    const asked = assess(more).questions.filter(({ code }) => code === 'sizes-swapped');
    expect(asked.map((each) => each.answered?.answer)).toEqual(['swapped']);
  });

  test('arms that would give a ratio below one are asked too', () => {
    const arms = [sized('pivot-to-tip', 0.911), sized('pivot-to-cup', 1.453)];
    expect(codesOf(inHand(arms))).toEqual(['sizes-swapped']);
    expect(partOf(assess(inHand(arms))).benchRatio).toBeUndefined();
  });
});

describe('one reading that speaks against a family all others fit', () => {
  const alone = inHand([...without('roller-diameter'), sized('roller-diameter', 0.35)]);

  test('asks for itself, named, and no family is named before', () => {
    expect(firstOf(alone)[0]).toBe('held back');
    const assessment = assess(alone);
    const question = assessment.questions.find(({ code }) => code === 'reading-stands-alone');
    expect(question?.ask).toContain('Roller diameter, 0.35 in, stands alone');
    expect(question?.size).toMatch(/^Without it Sorrel 160-B would stand first\.$/);
    expect(assessment.headlines[0]?.sentence).toContain(
      'no family is named yet. Read the roller diameter again',
    );
    expect(assessment.next?.action).toBe('reading-stands-alone');
  });

  test('misread: it counts no more, whatever is read after it; read again the same: none of these stands', () => {
    const misread = answered(alone, 'reading-stands-alone', 'found');
    expect(firstOf(misread)).toEqual(firstOf(inHand(without('roller-diameter'))));
    const again = { ...misread, part: [...misread.part, sized('roller-diameter', 0.496)] };
    const [code, chance] = firstOf(again);
    expect(code).toBe(SORREL_CODE);
    expect(chance).toBeCloseTo(asRead[1], 9);
    const stands = answered(alone, 'reading-stands-alone', 'not-found');
    expect(firstOf(stands)[0]).toBe('none');
    expect(assess(stands).headlines[0]?.sentence).toContain('it is none of the catalogue’s families');
  });

  test('is not asked where the part fits no family by more than one reading, nor of too few readings', () => {
    const two = inHand([
      ...SORREL.filter(({ kind }) => kind !== 'roller-diameter' && kind !== 'body-width'),
      sized('roller-diameter', 0.35),
      sized('body-width', 1.08),
    ]);
    expect(firstOf(two)[0]).toBe('none');
    expect(codesOf(two)).not.toContain('reading-stands-alone');
    expect(codesOf(inHand([sized('hole-across-trunnion', 0.9)]))).toEqual([]);
  });
});

describe('answers to what does not go together', () => {
  test('of two sizes of one hole the right one is chosen, and the other does not count', () => {
    const holes = [sized('hole-across-trunnion', 0.375), sized('hole-across-trunnion', 0.4355)];
    const both = inHand([...without('hole-across-trunnion'), ...holes]);
    const settled = answered(both, 'two-sizes', 'largest');
    expect(firstOf(settled)[0]).toBe(SORREL_CODE);
    expect(partOf(assess(settled)).holes.map(({ readAs }) => readAs)).toEqual(['0.4355 in']);
  });

  test('rings that were misread do not count', () => {
    const against = inHand([...without('rings'), seen('rings', 'none')]);
    const settled = answered(against, 'rings-against-width', 'rings');
    expect(firstOf(settled)).toEqual(firstOf(inHand(without('rings'))));
  });
});
