import { describe, expect, test } from 'vitest';
import { wordsOf } from '../../../server/mechanics/assessment/words-of.ts';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { answered, codesOf, inHand, partOf, SORREL, sized } from './hand-part.ts';
import { stamped } from './plain.ts';

const assess = assessAsTold('part-fits');

const detailOf = (...given: Parameters<typeof inHand>) => partOf(assess(inHand(...given)));

describe('ordinary sizes: common practice, no published source', () => {
  test('a roller of .595 is a .600 one, read small; the next one down is shown as differing', () => {
    const [roller] = detailOf([sized('roller-diameter', 0.595)]).ordinary;
    expect(roller?.sizes.map(({ name, word }) => [name, word])).toEqual([
      ['.600', 'agrees'],
      ['.500', 'differs'],
    ]);
    expect((roller?.sizes[0]?.offset ?? 0) / IN).toBeCloseTo(-0.005, 9);
  });

  test('a width within .050 of neither is said to differ from both', () => {
    const [width] = detailOf([sized('width-across-trunnion', 1.4)]).ordinary;
    expect(width?.sizes.map(({ word }) => word)).toEqual(['differs', 'differs']);
  });

  test('a stem between 5/16 and 8 mm is in reach of both, and neither is named alone', () => {
    const [stem] = detailOf([sized('stem-diameter', 0.3117)]).ordinary;
    const inReach = stem?.sizes.filter(({ word }) => word !== 'differs').map(({ name }) => name);
    expect(inReach).toEqual(['5/16', '8 mm']);
    expect(stem?.sizes.map(({ word }) => word)).not.toContain('agrees');
  });

  test('a hole has the offset from each size; a rule cannot tell', () => {
    const [hole] = detailOf([sized('hole-across-trunnion', 0.4355)]).holes;
    expect(hole?.threads.map(({ offset }) => Number((offset / IN).toFixed(4)))).toEqual([-0.002, -0.002]);
    expect(hole?.others[0]?.fit).toBe('differs');
    const [ruled] = detailOf([sized('hole-across-trunnion', 0.4355, { tool: 'rule' })]).holes;
    expect(ruled?.word).toBe('cannot-tell');
  });

  test('every word of it is among those that a face may show', () => {
    const words = wordsOf(assess(inHand([sized('roller-diameter', 0.595), sized('body-width', 1.2)])));
    expect(words).toContainEqual(
      expect.objectContaining({ id: 'part:ordinary:roller-diameter-0.595:.600', word: 'agrees' }),
    );
    expect(words).toContainEqual(
      expect.objectContaining({ id: 'part:ordinary:body-width-1.2:range', word: 'differs' }),
    );
  });
});

describe('the stud that came out', () => {
  // Ten threads: 14.1 mm at 18 to the inch, 10.6 at 24, 12.5 at 1.25 mm, by arithmetic (25.4 · 10 / 18 and so on).
  const ten = (millimetres: number, tool: 'caliper' | 'rule' = 'caliper') =>
    sized('stud-pitch', (millimetres * MM) / IN, { count: 10, tool, id: 'pitch' });

  test.each([
    [14.1, 0.3105, ['5/16-18 UNC']],
    [10.6, 0.311, ['5/16-24 UNF']],
    [12.5, 0.3125, ['M8×1.25']],
    [12.7, 0.4335, ['7/16-20 UNF']],
    [18.1, 0.432, ['7/16-14 UNC']],
  ])('ten threads over %s mm and %s in over the thread (ASME B1.1, ISO 965-2)', (over, major, named) => {
    const { stud } = detailOf([ten(over), sized('stud-diameter', major)]);
    expect(stud?.named).toEqual(named);
    expect(stud?.lacks).toBeUndefined();
  });

  test('the half-width follows: .002 over ten threads is .0002 of pitch', () => {
    const { stud } = detailOf([sized('stud-pitch', 0.5, { count: 10 })]);
    expect((stud?.pitch?.value ?? 0) / IN).toBeCloseTo(0.05, 9);
    expect((stud?.pitch?.within ?? 0) / IN).toBeCloseTo(0.0002, 9);
    expect(stud?.lacks).toContain('diameter');
  });

  test('a rule over ten threads cannot part 20 to the inch from 1.25 mm; the diameter does', () => {
    const threads = detailOf([ten(12.6, 'rule')]).stud?.named ?? [];
    expect(threads).toEqual(expect.arrayContaining(['7/16-20 UNF', 'M8×1.25']));
    expect(detailOf([ten(12.6, 'rule'), sized('stud-diameter', 0.4335)]).stud?.named).toEqual([
      '7/16-20 UNF',
    ]);
  });

  test('it names the thread where the hole only suggests, and narrows what the hole says', () => {
    const both = [sized('hole-across-trunnion', 0.4355), ten(12.7), sized('stud-diameter', 0.4335)];
    const assessment = assess(inHand(both));
    expect(assessment.headlines.map(({ sentence }) => sentence)).toContain(
      'The thread that came out is 7/16-20 UNF; the hole goes with it.',
    );
    expect(partOf(assessment).holes[0]?.threads.map(({ designation }) => designation)).toEqual([
      '7/16-20 UNF',
    ]);
  });

  test('a stud that the hole was not made for is asked about, and a no takes it out', () => {
    const evidence = inHand([
      sized('hole-across-trunnion', 0.3735),
      ten(12.7),
      sized('stud-diameter', 0.4335),
    ]);
    expect(codesOf(evidence)).toContain('stud-against-hole');
    expect(partOf(assess(answered(evidence, 'stud-against-hole', 'found'))).stud).toBeUndefined();
  });

  test('crests counted for gaps: ten over nine pitches is asked, and the answer counts', () => {
    // Nine pitches of 1/20 in: .450.
    const evidence = inHand([sized('stud-pitch', 0.45, { count: 10 }), sized('stud-diameter', 0.4335)]);
    expect(partOf(assess(evidence)).stud?.named).toEqual([]);
    const settled = answered(evidence, 'crests-counted', 'crests');
    expect(partOf(assess(settled)).stud?.named).toEqual(['7/16-20 UNF']);
  });
});

describe('the ratio by two arm lengths', () => {
  const arms = (within: number) => [
    sized('pivot-to-tip', 1.48, { typedWithin: within * IN }),
    sized('pivot-to-cup', 0.925, { typedWithin: within * IN }),
  ];

  test.each([
    // Half-width of the interval by hand: 1.96·(a/√3)/.925·√(1 + 1.6²); trade practice 3 has ± .010 and ± .021.
    [0.005, 0.01154],
    [0.01, 0.02308],
  ])('± %s on each arm gives ± %s', (within, half) => {
    const { benchRatio } = detailOf(arms(within));
    if (benchRatio?.lacks !== undefined || benchRatio === undefined) throw new Error('a ratio is expected');
    expect(benchRatio.ratio).toBeCloseTo(1.6, 9);
    expect((benchRatio.high - benchRatio.low) / 2).toBeCloseTo(half, 5);
    expect(benchRatio.inReach).toEqual([1.6]);
    expect(benchRatio.sentence).toMatch(/bench estimate and settles no mark/);
  });

  test('it is a quantity with its interval, and no judgement sets it against the mark', () => {
    const armed = inHand(arms(0.01), {
      arms: [stamped('1.5')],
      handParts: [{ name: 'the fifth arm', armId: 'arm-a' }],
    });
    const assessment = assess(armed);
    const quantity = assessment.quantities.find(({ id }) => id === 'part:bench-ratio');
    expect(quantity).toMatchObject({ dimension: 'ratio', basis: 'calculated' });
    expect(assessment.judgements).toEqual([]);
    expect(partOf(assessment).arm?.sentence).toBe(
      'It is the arm “A”: ratio stamp “1.5”; it sits on no valve now.',
    );
  });

  test('arms that are no more than a guess: wide, and said so; half of the length and more: no ratio', () => {
    const guessed = [
      sized('pivot-to-tip', 1.48, { tool: 'guess' }),
      sized('pivot-to-cup', 0.925, { tool: 'guess' }),
    ];
    const { benchRatio } = detailOf(guessed);
    expect(benchRatio?.lacks).toBeUndefined();
    if (benchRatio?.lacks === undefined) expect(benchRatio?.sentence).toContain('guessed');
    expect(detailOf(arms(0.5)).benchRatio?.lacks).toMatch(/^No ratio from these arms/);
  });
});

describe('what the family that stands first means', () => {
  test('cover, stud and guide plate, each with its chance and that of all that mean the same', () => {
    const { ranking } = detailOf(SORREL);
    const [first] = ranking?.candidates ?? [];
    const implied = ranking?.implied ?? [];
    expect(implied.map(({ what }) => what)).toEqual(['stud', 'cover', 'guide']);
    for (const { sentence, probability, together } of implied) {
      expect(probability).toBe(first?.chance?.probability);
      expect(together).toBeGreaterThanOrEqual(probability);
      expect(sentence).toMatch(/^If it is Sorrel 160-B, (over )?\d+ %: .* come to (over )?\d+ %\.$/);
    }
    expect(implied[0]?.sentence).toContain('7/16');
    expect(implied[1]?.sentence).toContain('bolted round its edge');
  });

  test('nothing while none of these stands first', () => {
    expect(detailOf([sized('hole-across-trunnion', 0.9)]).ranking?.implied).toEqual([]);
  });
});

describe('several parts in the hand', () => {
  const OTHER = 'part-2';
  const two = inHand(
    [
      ...SORREL,
      sized('hole-across-trunnion', 0.3735, { partId: OTHER, id: 'other-hole' }),
      sized('roller-diameter', 4.5, { partId: OTHER, id: 'other-roller' }),
    ],
    { handParts: [{ id: OTHER, name: 'the one from the box' }] },
  );

  test('each has its own readings, questions and ids', () => {
    const assessment = assess(two);
    expect(assessment.details.parts.map(({ about }) => about.name)).toEqual([
      'the first part',
      'the one from the box',
    ]);
    const ids = assessment.headlines.map(({ id }) => id);
    expect(ids).toContain('headline:part:family');
    expect(ids).toContain(`headline:part:${OTHER}:family`);
    const [question] = assessment.questions;
    expect(question).toMatchObject({ code: 'size-impossible', about: { of: 'part', partId: OTHER } });
    expect(partOf(assessment, OTHER).holes[0]?.threads[0]?.designation).toMatch(/^3\/8/);
  });

  test('the first part says the same as it does alone', () => {
    const alone = partOf(assess(inHand(SORREL)));
    const first = partOf(assess(two));
    expect(first.ranking).toEqual(alone.ranking);
    expect(first.holes).toEqual(alone.holes);
  });
});
