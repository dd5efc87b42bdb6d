import { assessedFor } from '../../../server/assessment/assessed.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import { buildOf } from '../../mechanics/assessment/laws/builds.ts';
import { facesOf, linesOf } from '../../tools/call-faces.ts';
import { callOf, recordOf } from '../../tools/record-of-evidence.ts';

/** A page as it is read. */
interface FaceRead {
  readonly name: string;
  readonly lines: readonly string[];
}

/** A build as it is shown on every page of its call. */
export interface Shown {
  readonly seed: number;
  readonly assessment: Assessment;
  readonly faces: readonly FaceRead[];
}

export function shownBuild(seed: number, evidence = buildOf(seed)): Shown {
  const record = recordOf(evidence);
  const call = callOf(evidence);
  const faces = facesOf(record, call.id).map(({ name, html }) => ({ name, lines: linesOf(html) }));
  return { seed, assessment: assessedFor(record, call), faces };
}

/** A line with plain spaces, one between two words. */
export const plain = (text: string): string => text.replace(/[\s\u00a0]+/g, ' ').trim();
