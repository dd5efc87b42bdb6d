import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { answered, codesOf, inHand, partOf, SORREL, seen, without } from './hand-part.ts';

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
