import { describe, expect, test } from 'vitest';
import { MM } from '../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { answered, codesOf, inHand, SORREL, sized } from './hand-part.ts';

const assess = assessAsTold('stud-no-thread');

/*
 * A stud whose diameter and pitch are together no thread. 12.7 mm over ten is 1.27 mm, 20 to the inch; ASME B1.1 has
 * 3/8 with 16 and 24, 7/16 with 14 and 20. The part is invented.
 */
const diameter = sized('stud-diameter', 0.374);
const pitch = sized('stud-pitch', 0, { id: 'counted', size: 12.7 * MM, count: 10, readAs: '12.7 mm' });
const stud = inHand([...SORREL, diameter, pitch]);

describe('diameter and pitch that are no thread together', () => {
  test('are asked about, with what the hole says, before the call is ended', () => {
    const said = assess(stud);
    const question = said.questions.find(({ code }) => code === 'stud-no-thread');
    expect(question?.ask).toMatch(/\.374.*20 to the inch.*The hole and the pitch go with 7\/16-20/);
    expect(question?.restsOn).toEqual(['counted', diameter.id]);
    expect(said.next?.action).toBe('stud-no-thread');
  });

  test('the diameter misread: the pitch and the hole are left, and the diameter is asked for', () => {
    const said = assess(answered(stud, 'stud-no-thread', 'diameter'));
    const told = said.headlines.map(({ sentence }) => sentence).join('\n');
    expect(told).toMatch(/By hole and pitch it takes 7\/16-20 UNF; the diameter over the thread proves it/);
    expect(said.next?.action).not.toBe('stud-no-thread');
  });

  test('and once it is read again the thread is named: the answer holds for the reading that it was given of', () => {
    const before = answered(stud, 'stud-no-thread', 'diameter');
    const said = assess({ ...before, part: [...before.part, sized('stud-diameter', 0.435)] });
    expect(said.headlines.map(({ sentence }) => sentence).join('\n')).toMatch(/came out is 7\/16-20 UNF/);
    expect(said.questions.map(({ code }) => code)).not.toContain('two-sizes');
  });

  test('of another part: nothing of the stud counts', () => {
    const told = assess(answered(stud, 'stud-no-thread', 'other-part')).headlines.map(
      ({ sentence }) => sentence,
    );
    expect(told.join('\n')).not.toMatch(/thread that came out/);
  });

  test('both read again: they stay as they were read, and it is asked no more', () => {
    const said = assess(answered(stud, 'stud-no-thread', 'not-found'));
    expect(said.headlines.map(({ sentence }) => sentence).join('\n')).toMatch(/together no ordinary thread/);
    expect(said.next?.action).not.toBe('stud-no-thread');
  });

  test('is not asked of a stud that is a thread', () => {
    // 10.9 mm: 7/16 is 11.1 mm, read over a thread a little under its major diameter.
    const good = inHand([...SORREL, sized('stud-diameter', 0.435), pitch]);
    expect(codesOf(good)).not.toContain('stud-no-thread');
  });
});
