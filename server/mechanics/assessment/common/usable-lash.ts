import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { inDoubt } from './asked.ts';
import { foundTwice } from './found-twice.ts';
import { isLashDoubted } from './lash-doubt.ts';
import { orderQuestions } from './lash-log-of.ts';
import { newestLash } from './newest-lash.ts';
import { onceEach } from './once.ts';
import { placeOf } from './said.ts';

/**
 * The lash to work with: one that is doubted, or found as two gaps, is not used, nor is one before it; nor any while
 * nobody can tell whether the newest was found or set last.
 */
export const usableLash = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): LashEvidence | undefined => {
    if (orderQuestions(evidence, place).some(inDoubt)) return undefined;
    const twice = foundTwice(evidence, place);
    if (twice !== undefined) return twice.holds;
    const newest = newestLash(evidence, place);
    return newest === undefined || isLashDoubted(evidence, newest) ? undefined : newest;
  },
);
