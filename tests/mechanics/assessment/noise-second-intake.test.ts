import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { NOISE_QUESTIONS } from '../../../shared/schemas/noise.ts';
import type { ValveName } from '../../../shared/schemas/words.ts';
import { PLAIN, read } from './plain-build.ts';

/*
 * A noise at one of two intakes. Invented figures: lobes .350, the second intake of cylinder 2 down by .020. That a
 * lobe so far below its siblings speaks for lobe and lifter is common practice, no published source.
 */

const LOBES = [1, 2, 3, 4].flatMap((cylinder) => [
  read(cylinder, 'intake', 'lobe-lift', 0.35),
  read(cylinder, 'intake-2', 'lobe-lift', cylinder === 2 ? 0.33 : 0.35),
]);

function lobesSaidAt(cylinder: number, valve: ValveName, sheet = LOBES): string[] {
  const evidence: Evidence = {
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'noise-or-failure', engineState: 'has-run' },
    engine: { cylinders: 4, intakeValves: 2, lifter: 'solid-flat', mounting: 'stud' },
    sheet,
    answers: [
      {
        id: 'answer-which',
        line: 90,
        code: 'noise-which',
        question: NOISE_QUESTIONS['noise-which'].ask,
        answer: 'one',
        place: { cylinder, valve },
      },
    ],
  };
  const { facts } = assess(evidence).details.noise;
  return facts.map(({ text }) => text).filter((text) => text.startsWith('Sheet: the lobe of '));
}

test('the lobe that is down is told of its own valve, and not of the other intake beside it', () => {
  expect(lobesSaidAt(2, 'intake-2')).toEqual(['Sheet: the lobe of 2 intake 2 lifts less than the others']);
  expect(lobesSaidAt(2, 'intake')).toEqual(['Sheet: the lobe of 2 intake lifts as much as the others']);
});

test('a second intake has first intakes among its siblings', () => {
  // Read alone of its kind, beside the first intakes of all four cylinders.
  const few = LOBES.filter(({ cylinder, valve }) => valve === 'intake' || cylinder === 3);
  expect(lobesSaidAt(3, 'intake-2', few)).toEqual([
    'Sheet: the lobe of 3 intake 2 lifts as much as the others',
  ]);
});
