import { GAP_KINDS, SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { NotToRun } from '../assessment.ts';
import { limitOf } from '../common/limits.ts';
import { byId, inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { judgeGap } from './gap.ts';
import { isOfGap } from './gap-slip.ts';

/** A tool has told the same gap since, with the same arms. */
const isMeasured = (guess: SheetEvidence, evidence: Evidence): boolean =>
  evidence.sheet
    .filter(isOfGap)
    .filter(
      (each) =>
        each.standing &&
        each.tool !== 'guess' &&
        each.kind === guess.kind &&
        placeOf(each) === placeOf(guess) &&
        (each.otherArms ?? each.arms) === (guess.otherArms ?? guess.arms),
    )
    .some((each) => judgeGap(each, evidence).word !== undefined);

/**
 * Gaps that were only guessed, and under their limit: a guess is no reading, so that nothing stops by it; but nobody runs
 * it before somebody has measured what is thought to be short.
 */
export function guessedShort(evidence: Evidence): NotToRun[] {
  return evidence.sheet.toSorted(byId).flatMap((entry): NotToRun[] => {
    const { tool, standing, kind, reading, valve } = entry;
    const gap = GAP_KINDS.find((each) => each === kind);
    const guess = reading.value ?? reading.high;
    if (tool !== 'guess' || !standing || gap === undefined || guess === undefined) return [];
    const limit = limitOf(evidence, gap, sideOfValve(valve)).value;
    if (guess <= 0 || guess >= limit || isMeasured(entry, evidence)) return [];
    return [
      {
        id: `not-to-run:guessed:${entry.id}`,
        what: 'run',
        about: valveSubject(entry),
        sentence: `Do not run it before it is measured: ${SHEET_KINDS[gap].toLowerCase()} on ${placeOf(entry)} is guessed at ${inches(guess)}, under ${inches(limit)}.`,
        todo: { action: 'measure-gap', step: 'sheet' },
        wayOut: 'Measure the gap with a tool. A qualified shop looks before it runs if it is short.',
      },
    ];
  });
}
