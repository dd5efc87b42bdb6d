import { lashDoubt } from '../common/lash-doubt.ts';
import { placeOf } from '../common/said.ts';
import { isSince } from '../common/since.ts';
import type { Evidence } from '../evidence.ts';

/** Lines of the log that were answered to be entered wrong, and whose valve was entered again since. */
export function lashReadSince(evidence: Evidence): ReadonlySet<string> {
  const standing = evidence.lash.filter((line) => line.standing);
  return new Set(
    standing.flatMap((line) => {
      const { answered } = lashDoubt(evidence, line) ?? {};
      const answer = evidence.answers.find(({ id }) => answered?.found === true && id === answered.entryId);
      if (answer === undefined) return [];
      const again = standing.some(
        (other) => other !== line && placeOf(other) === placeOf(line) && isSince(other, answer),
      );
      return again ? [line.id] : [];
    }),
  );
}
