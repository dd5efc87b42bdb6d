import type { Assessment } from './assessment.ts';
import type { PartSaid } from './common/part-said.ts';
import type { Details } from './details.ts';
import type { Evidence } from './evidence.ts';
import { lackingFor, missingOf } from './missing/missing.ts';
import { nextOf } from './next/next.ts';
import { ratioPart } from './ratio/ratio.ts';
import { sheetPart } from './sheet/sheet.ts';
import { stopReasons } from './stop.ts';

/** All that the parts say, each list in the order of the parts. */
function together(parts: readonly PartSaid<unknown>[]) {
  return {
    quantities: parts.flatMap(({ quantities }) => quantities),
    judgements: parts.flatMap(({ judgements }) => judgements),
    questions: parts.flatMap(({ questions }) => questions),
    headlines: parts.flatMap(({ headlines }) => headlines),
  };
}

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
  const sheet = sheetPart(evidence);
  const parts = [ratio, sheet];
  const said = together(parts);
  const stop = stopReasons(
    evidence,
    parts.flatMap((part) => part.stop),
  );
  const lacking = lackingFor(evidence, ratio.explained);
  const next = nextOf({
    closed: evidence.call.closed,
    stop,
    lacking,
    questions: said.questions,
    explained: ratio.explained,
  });
  const details: Details = {
    setUps: ratio.detail,
    sheet: sheet.detail,
    change: [],
    marks: {},
    lash: {},
    part: {},
  };
  return {
    ...said,
    explanations: ratio.explanations,
    remaining: ratio.remaining,
    ...(next === undefined ? {} : { next }),
    missing: missingOf(lacking),
    stop,
    details,
  };
}
