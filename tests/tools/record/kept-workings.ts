import { workingEvidence } from '../../../server/assessment/evidence/other-entries.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { entry } from './stored.ts';

/** A sum that was kept with a build: which, and what went in. */
export type Kept = readonly [computation: string, inputs: Record<string, unknown>];

/** Kept sums as the assessment takes them, in the order in which they were kept. */
export const workingsOf = (kept: readonly Kept[]): Evidence['workings'] =>
  kept.map(([computation, inputs], index) =>
    workingEvidence({
      ...entry({ id: `working-${index + 1}`, line: index + 1, standing: true }),
      computation,
      inputs,
      answer: {},
      revision: 1,
    }),
  );
