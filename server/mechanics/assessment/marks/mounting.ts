import { MOUNTING } from '../../tip-mark/mark-questions.ts';
import { chosenOf } from '../common/chosen.ts';
import type { Evidence } from '../evidence.ts';
import { mountingAsked } from './asked-of.ts';

/** How the rockers are mounted, as it was answered to a question of a mark; what the build itself says goes first. */
export function withMountingAnswered(evidence: Evidence): Evidence {
  const { engine } = evidence;
  if (engine.mounting !== undefined) return evidence;
  const chosen = chosenOf(mountingAsked(MOUNTING, evidence));
  return chosen === 'stud' || chosen === 'pedestal' || chosen === 'shaft'
    ? { ...evidence, engine: { ...engine, mounting: chosen } }
    : evidence;
}
