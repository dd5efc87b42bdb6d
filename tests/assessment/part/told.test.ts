import { describe, expect, test } from 'vitest';
import { answerSaid } from '../../../server/mechanics/assessment/common/chosen.ts';
import { ratioNamedIn } from '../../../server/mechanics/assessment/common/stamp-read.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import {
  answered,
  codesOf,
  inHand,
  partOf,
  SORREL,
  seen,
  sized,
  without,
} from '../../mechanics/assessment/hand-part.ts';
import { buildOf, stamped } from '../../mechanics/assessment/plain.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';

const assess = assessAsTold('part-told');

/* What is told of a part in the hand, and what is not known of it: playbook 1 and 3, common practice, no published source. */

const headlines = (evidence: Evidence): string =>
  assess(evidence)
    .headlines.map(({ sentence }) => sentence)
    .join('\n');
const box = (text: string) => ({ ...seen('box-label', 'box'), typed: text, readAs: text });

describe('what the box says against the arms', () => {
  // 1.500 / .882 = 1.7007, by hand; the caliper’s ± on each centre gives about ± .026.
  const arms = [sized('pivot-to-tip', 1.5), sized('pivot-to-cup', 0.882)];

  test('the box says one six, the arms about 1.70: outside, and neither proves it', () => {
    expect(headlines(inHand([...arms, box('one six')]))).toMatch(
      /about 1\.70, 1\.675 to 1\.726; within it are 1\.7 and 1\.72\. The box says 1\.6: that is outside it\. It is a bench estimate/,
    );
  });

  test('what is within is said to be, and proves nothing', () => {
    expect(headlines(inHand([...arms, box('set of 16, 1.7')]))).toMatch(
      /The box says 1\.7: that is within it\. .*settles no mark/,
    );
  });

  test('without a label, what the rockers are sold as; with none of it, nothing', () => {
    expect(headlines(inHand(arms, { rockers: { soldAs: 1.6 } }))).toMatch(
      /They are sold as 1\.6: that is outside it/,
    );
    expect(headlines(inHand([...arms, box('H 22')]))).not.toMatch(/outside|says/);
  });

  test.each([
    ['one six', 1.6],
    ['box says 1.65 set', 1.65],
    ['1,7', 1.7],
    ['a one point five two', 1.52],
    ['H 22', undefined],
    ['160', undefined],
    ['lot 2.16.7', undefined],
    ['16 pieces', undefined],
  ])('“%s” names %s', (text, ratio) => {
    expect(ratioNamedIn(text)).toBe(ratio);
  });

  test('a narrow interval is told to a third place, so that no name seems within it', () => {
    const near = (tip: number, cup: number) =>
      headlines(
        inHand([
          sized('pivot-to-tip', tip, { typedWithin: 0.01 * IN }),
          sized('pivot-to-cup', cup, { typedWithin: 0.01 * IN }),
        ]),
      );
    // 1.480 / .925 = 1.6 ± .0231 by hand.
    expect(near(1.48, 0.925)).toMatch(/about 1\.60, 1\.577 to 1\.623; within it is 1\.6\./);
  });
});

describe('what is not known of a part is said', () => {
  test('all of it read: the ratio, the thread and the cover are still open', () => {
    const missing = assess(inHand(SORREL)).missing.map(({ id }) => id);
    expect(missing).toEqual(
      expect.arrayContaining(['missing:identify:thread', 'missing:identify:ratio', 'missing:identify:cover']),
    );
  });

  test('none of it keeps the answer waiting', () => {
    const marked = inHand([...SORREL, box('H 22')]);
    expect(assess(marked).missing.some(({ must }) => must)).toBe(false);
    // The widest of them does not clear every cover: that is asked, and nothing rests on it.
    expect(assess(marked).next?.action).toBe('cover');
  });

  test('what was read is not missing', () => {
    const read = inHand(
      [...SORREL, sized('stud-diameter', 0.4335), sized('stud-pitch', 0.5, { count: 10 })],
      {
        engine: { coverBolting: 'perimeter' },
      },
    );
    const missing = assess(read).missing.map(({ id }) => id);
    expect(missing).not.toContain('missing:identify:thread');
    expect(missing).not.toContain('missing:identify:cover');
  });
});

describe('one voice about what to read', () => {
  const alone = inHand([...without('roller-diameter'), sized('roller-diameter', 0.35)]);

  test('while one reading is asked for again, nothing says that no measurement is worth taking', () => {
    expect(partOf(assess(alone)).ranking?.tell.sentence).toBe(
      'First: read the roller diameter again, before you settle on none of these.',
    );
    expect(JSON.stringify(assess(alone))).not.toContain('Nothing that is left to measure');
  });

  test('from one kind of reading another one is asked for', () => {
    const { ranking } = partOf(
      assess(inHand([sized('hole-across-trunnion', 0.4355), sized('hole-across-trunnion', 0.436)])),
    );
    expect(ranking?.tell.sentence).not.toContain('Nothing that is left');
  });

  test('the answer is told in its own words, and never as “not found”', () => {
    const settled = answered(alone, 'reading-stands-alone', 'not-found');
    const question = assess(settled).questions.find(({ code }) => code === 'reading-stands-alone');
    if (question?.answered === undefined) throw new Error('it was answered');
    const said = {
      ...question,
      answered: { ...question.answered, answer: 'not found: twice more, .350 and .351' },
    };
    expect(answerSaid(said)).toBe('Read again: it is as it was read');
    expect(answerSaid(question)).toBe('Read again: it is as it was read');
  });

  test('none of the families is said as what it is', () => {
    const settled = answered(alone, 'reading-stands-alone', 'not-found');
    expect(headlines(settled)).toMatch(
      /most likely, (over )?\d\d %, it is none of the catalogue’s families\./,
    );
  });

  test('a hole that was read both ways is not asked for both ways', () => {
    const cautions = (...holes: readonly number[]) =>
      partOf(assess(inHand(holes.map((hole) => sized('hole-across-trunnion', hole))))).holes.flatMap(
        (each) => each.cautions,
      );
    expect(cautions(0.4355, 0.436).join(' ')).not.toContain('twice at right angles');
    expect(cautions(0.4355).join(' ')).toContain('twice at right angles');
  });
});

describe('room under a cover bolted through its centre: narrow agrees within .020 of 1.200, wide of 1.600', () => {
  const engine = { coverBolting: 'through-centre' } as const;
  test.each([
    [1.2, 'clear'],
    [1.24, 'close'],
    [1.4, 'close'],
    [1.56, 'close'],
    [1.6, 'short'],
  ])('%s across: %s', (width, word) => {
    expect(partOf(assess(inHand([sized('width-across-trunnion', width)], { engine }))).cover?.word).toBe(
      word,
    );
  });

  test('while rings and width do not go together no room is told, and the photograph is next', () => {
    const both = inHand([sized('width-across-trunnion', 1.203), seen('rings', 'visible')], { engine });
    expect(partOf(assess(both)).cover).toBeUndefined();
    expect(assess(both).next?.action).toBe('rings-against-width');
    const settled = answered(both, 'rings-against-width', 'not-found');
    expect(partOf(assess(settled)).cover?.word).toBe('clear');
  });
});

describe('marks of one arm, wherever they were read', () => {
  const bare = { ...stamped('1.6'), ratioStamp: '' };
  const inPart = (typed: string) => [{ ...seen('ratio-stamp', typed), typed }];
  const hand = [{ name: 'the one from 1 intake', armId: 'arm-a' }];

  test('a stamp read in the hand is what its readings are set against, once the part is named as that arm', () => {
    const told = buildOf([0.557, 0.557, 0.557], { arms: [bare], part: inPart('1.6'), handParts: hand });
    expect(headlines(told)).toMatch(/agrees with the 1\.6 stamped on it/);
    expect(assess(told).judgements).toEqual(assess(buildOf([0.557, 0.557, 0.557])).judgements);
  });

  test('two stamps of one arm are asked, and the one on record counts', () => {
    const told = buildOf([0.557, 0.557, 0.557], {
      arms: [stamped('1.6')],
      part: inPart('1.5'),
      handParts: hand,
    });
    expect(codesOf(told)).toContain('arm-marked-two-ways');
    expect(headlines(told)).toMatch(/the 1\.6 stamped on it/);
  });

  test('arms of one set with other stamps or numbers are asked: playbook 1, marks', () => {
    const four = ['1.6', '1.6', '1.6', '1.5'].map((stamp, at) => stamped(stamp, `arm-${'abcd'[at]}`));
    const told = buildOf([0.557, 0.557, 0.557], { arms: four, seats: [] });
    const question = assess(told).questions.find(({ code }) => code === 'arms-marked-apart');
    expect(question?.ask).toBe(
      'The arms do not all have the same ratio stamp: “1.6” on A, B and C; “1.5” on D. Are they one set?',
    );
    const change = { ...told, call: { ...told.call, goal: 'clearances-after-a-change' as const } };
    expect(codesOf(change)).not.toContain('arms-marked-apart');
    const alike = ['1.6', '1.6'].map((stamp, at) => stamped(stamp, `arm-${'ab'[at]}`));
    expect(codesOf(buildOf([0.557], { arms: alike }))).not.toContain('arms-marked-apart');
  });
});
