import type { Evidence } from '../evidence.ts';
import { lashReadSince } from './lash.ts';
import { withAnswersNamed } from './named.ts';
import { passesReadSince } from './passes.ts';
import { sheetReadSince } from './sheet.ts';

/**
 * What was entered because of an answer is the cure, and no second opinion: a reading that was found wrong and taken
 * again is shown and not judged, as one that was replaced, until a person strikes it out.
 */
export function withReadSince(entered: Evidence): Evidence {
  const evidence = withAnswersNamed(entered);
  const [ofPasses, ofSheet] = [passesReadSince(evidence), sheetReadSince(evidence)];
  const ofLash = lashReadSince(evidence);
  if (ofPasses.size + ofSheet.size + ofLash.size === 0) return evidence;
  const put = <Entry extends { readonly id: string; readonly standing: boolean }>(
    entries: readonly Entry[],
    since: ReadonlySet<string>,
  ) =>
    entries.map((each) =>
      since.has(each.id) ? { ...each, standing: false, readAgain: true as const } : each,
    );
  return {
    ...evidence,
    passes: put(evidence.passes, ofPasses),
    sheet: put(evidence.sheet, ofSheet),
    lash: evidence.lash.map((line) => (ofLash.has(line.id) ? { ...line, standing: false } : line)),
  };
}
