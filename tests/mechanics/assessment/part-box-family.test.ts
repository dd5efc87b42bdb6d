import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { answered, codesOf, inHand, partOf, SORREL, seen, sized, without } from './hand-part.ts';

/* The invented catalogue of the demo: a Sorrel 160-B is wide, a Teasel narrow. */
const box = (text: string) => seen('box-label', text, { id: 'box', typed: text });
const asked = (text: string) =>
  assess(inHand([...SORREL, box(text)])).questions.find(({ code }) => code === 'box-against-family');

describe('a box that names a family, and a part measured as another', () => {
  test('it is said, with what each would mean', () => {
    const question = asked('TEASEL 150-A rocker arms, set of 16');
    expect(question?.ask).toMatch(
      /^The box says “TEASEL 150-A rocker arms, set of 16”, and by what was measured it is Sorrel 160-B, a 1\.6\./,
    );
    expect(question?.size).toMatch(/^The box is of Teasel 150-A, a 1\.5\. Not as that family has it: /);
    expect(question?.answers.map(({ code }) => code)).toEqual(['found', 'wrong-in-box', 'not-found']);
    expect(question?.answers.every(({ changes }) => changes !== '')).toBe(true);
  });

  test.each(['Sorrel 160-B', 'sorrel 160 b', 'a plain box', '16 arms'])('“%s” asks nothing', (text) => {
    expect(asked(text)).toBeUndefined();
  });

  test('one that the readings leave in reach asks nothing, and nor does a part that nothing names yet', () => {
    expect(codesOf(inHand([...SORREL.slice(0, 2), box('Teasel 150-A')]))).not.toContain('box-against-family');
  });

  test('each answer: gone with the box, or kept with what was said', () => {
    const build = inHand([...SORREL, box('Teasel 150-A')]);
    const other = assess(answered(build, 'box-against-family', 'found'));
    expect(partOf(other).readings.find(({ entryId }) => entryId === 'box')?.counts).toBe('left-out');
    for (const code of ['found', 'wrong-in-box', 'not-found'])
      expect(
        assess(answered(build, 'box-against-family', code)).questions.some(
          (each) => each.code === 'box-against-family' && each.answered === undefined,
        ),
      ).toBe(false);
  });

  test('the box on record of the arm that is in the hand says the same', () => {
    const arm = { id: 'arm', name: 'A', ratioStamp: '', otherNumber: '', boxLabel: 'Teasel 150-A' };
    const build = inHand(without('none'), { arms: [arm], handParts: [{ name: 'A', armId: 'arm' }] });
    expect(codesOf(build)).toContain('box-against-family');
  });
});

/* The invented Bistorts: 170-B, 172-B and 175-B differ by their cups alone, .959, .945 and .924, and a cup is read to .010. */
describe('a box of a family that the readings hold as well as the one that stands first', () => {
  const bistort = (cup: number) => [
    sized('hole-across-trunnion', 0.436),
    sized('hole-across-trunnion', 0.4355),
    sized('width-across-trunnion', 1.655),
    sized('roller-diameter', 0.597),
    sized('body-width', 1.04),
    sized('pivot-to-tip', 1.62),
    sized('pivot-to-cup', cup),
    seen('rings', 'visible'),
    seen('mount', 'stud'),
    box('Bistort 170-B'),
  ];

  test('.948 puts 172-B first and rules out no 170-B: it is told, and nothing is asked', () => {
    const said = assess(inHand(bistort(0.948)));
    expect(said.questions.map(({ code }) => code)).not.toContain('box-against-family');
    expect(said.headlines[0]?.sentence).toMatch(
      /Bistort 172-B stands first.*The box says “Bistort 170-B”: what was read fits Bistort 170-B and Bistort 172-B alike, and only the ratio on the engine tells/,
    );
  });

  test('.920 is .039 off the cup of a 170-B: it is asked, with what differs', () => {
    const question = assess(inHand(bistort(0.92))).questions.find(
      ({ code }) => code === 'box-against-family',
    );
    expect(question?.size).toMatch(/Not as that family has it: pivot to cup/);
  });

  test('.957 puts 170-B itself first: nothing is told of its box', () => {
    const said = assess(inHand(bistort(0.957)));
    expect(said.questions.map(({ code }) => code)).not.toContain('box-against-family');
    expect(said.headlines.map(({ sentence }) => sentence).join(' ')).not.toMatch(/alike/);
  });
});
