import { expect, test } from 'vitest';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { type Kept, workingsOf } from '../../tools/record/kept-workings.ts';

/*
 * What was worked out and kept is told by the assessment: figures by hand beside each call, from the lever about the
 * valve tip (a nut on the stud moves the plunger pitch × (1 + 1/ratio) a turn; 7/16-20 at 1.6 is .050 × 1.625 = .08125).
 */

export interface Call {
  readonly name: string;
  readonly kept: readonly Kept[];
  readonly base?: Partial<Evidence>;
  readonly answers?: Evidence['answers'];
  check(said: Assessment): void;
}

export const PRELOAD = { thread: '7/16-20', mount: 'stud-nut', ratio: 1.6 };

export const SOLID = { ...PRELOAD, lifter: 'solid', lashFound: '.022 in', lashWanted: '.016 in' };

/** Of a preload the lifters are hydraulic, where the call does not say. */
const lifterOf = (kept: Call['kept']) =>
  kept.some(([name]) => name === 'lifter-preload') ? ('hydraulic-roller' as const) : ('solid-flat' as const);

const evidenceOf = ({ kept, base, answers = [] }: Call): Evidence => ({
  ...PLAIN,
  engine: { ...PLAIN.engine, lifter: lifterOf(kept) },
  ...base,
  answers,
  workings: workingsOf(kept),
});

/** Of what is said, the headlines of a step. */
export const of = (said: Assessment, step: string) =>
  said.headlines.filter((each) => each.step === step).map(({ sentence }) => sentence);

export const codes = ({ questions }: Assessment) => questions.map(({ code }) => code);

/** Each call is told what it checks, and in sentences that are no longer than can be read aloud. */
export function tellEach(calls: readonly Call[], assess: (evidence: Evidence) => Assessment): void {
  test.each(calls)('$name', (call) => {
    call.check(assess(evidenceOf(call)));
  });

  test.each(calls)('$name: no sentence is longer than can be read aloud', (call) => {
    for (const { sentence, step } of assess(evidenceOf(call)).headlines)
      if (step === 'adjuster' || step === 'geometry')
        for (const one of sentence.split(/(?<=[a-z].)\s+(?=[A-Z])/))
          expect(one.split(' ').length).toBeLessThan(25);
  });
}
