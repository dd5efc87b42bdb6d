import { describe, expect, test } from 'vitest';
import { type AdjusterKind, adjusterKind } from '../../../server/mechanics/lash/adjuster-words.ts';
import { noiseAsks, noiseWords } from '../../../server/mechanics/noise/noise-words.ts';
import { isNoiseQuestion, NOISE_QUESTIONS } from '../../../shared/schemas/noise.ts';
import { noiseOf, said } from '../assessment/noise-build.ts';

/* How each mounting is made, from memory: a nut on a stud, a bolt through a pedestal, a screw with its lock nut on a shaft. */

const NUT = /\bnut\b/;
const textOf = (kind: AdjusterKind): string =>
  Object.keys(NOISE_QUESTIONS)
    .filter(isNoiseQuestion)
    .filter((each) => each === 'noise-nut' || each === 'noise-thread')
    .map((each) => JSON.stringify(noiseWords(each, kind)))
    .join(' ');

describe('what is asked of the adjuster is asked in the words of this engine', () => {
  test('a nut on a stud, a bolt, a lock nut', () => {
    expect(noiseWords('noise-nut', 'stud').ask).toBe(NOISE_QUESTIONS['noise-nut'].ask);
    expect(noiseWords('noise-nut', 'pedestal').ask).toBe('Had the bolt moved, before anything was touched?');
    expect(noiseWords('noise-nut', 'shaft').ask).toBe('Had the lock nut moved, before anything was touched?');
    expect(textOf('pedestal')).not.toMatch(NUT);
    expect(textOf('shaft').replaceAll(/lock nut/gi, '')).not.toMatch(NUT);
    expect(textOf('cam-rocker').replaceAll(/lock nut/gi, '')).not.toMatch(NUT);
  });

  test('its answers stay the same words of the record', () => {
    for (const kind of ['stud', 'pedestal', 'shaft', 'cam-rocker', 'not-known'] as const)
      for (const question of ['noise-nut', 'noise-thread'] as const)
        expect(Object.keys(noiseWords(question, kind).answers), `${kind} ${question}`).toEqual(
          Object.keys(noiseWords(question, 'stud').answers),
        );
  });

  test('an answer kept by the words of its question alone is known in any of them', () => {
    const engine = { cylinders: 8, mounting: 'pedestal', lifter: 'solid-flat' } as const;
    for (const question of noiseAsks('noise-nut')) {
      const entry = { ...said('noise-nut', 'moved'), code: '', question };
      const told = noiseOf({ engine, answers: [entry] });
      expect(
        told.notToRun.map(({ sentence }) => sentence),
        question,
      ).toEqual(['Do not run it: the bolt has moved.']);
    }
  });

  test('the gear says what sets the gap', () => {
    expect(adjusterKind({ mounting: 'pedestal' })).toBe('pedestal');
    expect(adjusterKind({ gear: 'cam-rocker' })).toBe('cam-rocker');
  });
});
