import type { Assessment } from './assessment.ts';
import type { Evidence } from './evidence.ts';
import { lackingFor, missingOf } from './missing/missing.ts';
import { nextOf } from './next/next.ts';
import { ratioPart } from './ratio/ratio.ts';
import { stopReasons } from './stop.ts';

/**
 * Everything that is said about a build, from what is known of it now.
 *
 * @param evidence everything on the record, in SI; see evidence.ts. The order of its lists says nothing.
 * @returns quantities, judgements, questions and explanations, what is next and what is missing, and the stops
 *
 * Validity: one build; no clock, and the same evidence gives the same assessment.
 * Source: each part names the source of its own limits.
 */
export function assess(evidence: Evidence): Assessment {
  const ratio = ratioPart(evidence);
  const lacking = lackingFor(evidence, ratio.explained);
  const stop = stopReasons(evidence, ratio.stop);
  const { questions, explained } = ratio;
  const next = nextOf({ closed: evidence.call.closed, stop, lacking, questions, explained });
  return {
    quantities: ratio.quantities,
    judgements: ratio.judgements,
    questions,
    explanations: ratio.explanations,
    remaining: ratio.remaining,
    ...(next === undefined ? {} : { next }),
    missing: missingOf(lacking),
    stop,
    headlines: ratio.headlines,
    details: { setUps: ratio.detail, sheet: {}, change: [], marks: {}, lash: {}, part: {} },
  };
}
