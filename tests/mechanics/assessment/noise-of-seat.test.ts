import { describe, expect, test } from 'vitest';
import { logged, noiseOf, said } from './noise-build.ts';
import { PLAIN } from './plain-build.ts';

/*
 * A gap that closed at one heat with its lock or shim where it was: seat or valve; what wears in the train opens a gap.
 * Common practice, no published source.
 */
const LOG = [logged(1, 'set', 0.022), logged(2, 'found', 0.013, 'held')];
const ANSWERED = [
  said('noise-signs', 'none', { line: 10 }),
  said('noise-which', 'one', { line: 11, place: { cylinder: 2, valve: 'intake' } }),
];
const BUCKET = { ...PLAIN.engine, gear: 'bucket', lifter: 'solid-flat' } as const;
const STUD = { ...PLAIN.engine, gear: 'pushrod', lifter: 'solid-flat', mounting: 'stud' } as const;
const headlineOf = ({ headlines }: ReturnType<typeof noiseOf>) =>
  headlines.find(({ id }) => id === 'headline:noise')?.sentence;
const seatOf = ({ questions }: ReturnType<typeof noiseOf>) =>
  questions.find(({ code }) => code === 'seat-looked');

describe.each([
  ['bucket', BUCKET],
  ['stud', STUD],
] as const)('a gap that closed, %s', (_, engine) => {
  const closed = noiseOf({ engine, lash: LOG, answers: ANSWERED });

  test('valve and seat stand first, and what wears has it against it', () => {
    const [first, ...others] = closed.details.noise.candidates;
    expect([first?.cause, first?.for.map(({ text }) => text)]).toEqual([
      'seat',
      [expect.stringContaining('2 intake'), expect.stringMatching(/2 intake closed at one heat/)],
    ]);
    expect(others.find(({ cause }) => cause === 'lifter')?.against).not.toEqual([]);
    expect(headlineOf(closed)).toMatch(/valve and seat/);
  });

  test('a shop looks there next, before hours or heat are asked', () => {
    expect(closed.next?.sentence).toMatch(/valve and seat/);
    expect(closed.next?.turns).toBe(false);
  });

  test('answered: worn is found, sound speaks against it', () => {
    const question = seatOf(closed);
    const answer = (code: string) =>
      noiseOf({
        engine,
        lash: LOG,
        answers: [
          ...ANSWERED,
          said('seat-looked', code, {
            line: 12,
            questionId: question?.id ?? '',
            question: question?.ask ?? '',
          }),
        ],
      });
    const worn = answer('worn');
    expect(worn.details.noise.candidates[0]).toMatchObject({ cause: 'seat', seen: true });
    expect(headlineOf(worn)).toMatch(/Most speaks for valve and seat\./);
    const sound = answer('sound').details.noise.candidates.find(({ cause }) => cause === 'seat');
    expect(sound?.against).toHaveLength(1);
  });
});

test('where no gap closed a seat is no cause', () => {
  const grown = noiseOf({ engine: STUD, lash: [logged(1, 'set', 0.018), logged(2, 'found', 0.028, 'held')] });
  expect(grown.details.noise.candidates.map(({ cause }) => cause)).not.toContain('seat');
});
