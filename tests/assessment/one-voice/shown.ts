import { assessedFor } from '../../../server/assessment/assessed.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import { buildOf } from '../../mechanics/assessment/laws/builds.ts';
import { type Face, facesOf } from '../../tools/call-faces.ts';
import { callOf, recordOf } from '../../tools/record-of-evidence.ts';

/** A build as it is shown on every page of its call. */
export interface Shown {
  readonly seed: number;
  readonly assessment: Assessment;
  readonly faces: readonly Face[];
}

export function shownBuild(seed: number, evidence = buildOf(seed)): Shown {
  const record = recordOf(evidence);
  const call = callOf(evidence);
  return { seed, assessment: assessedFor(record, call), faces: facesOf(record, call.id) };
}

/** A line with plain spaces, one between two words. */
export const plain = (text: string): string => text.replace(/[\s\u00a0]+/g, ' ').trim();
