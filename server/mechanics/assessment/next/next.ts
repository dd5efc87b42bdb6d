import type { AssessedQuestion, NextAction, NotToRun, StopReason, Subject } from '../assessment.ts';
import type { Lacking } from '../missing/missing.ts';
import type { GroupExplained } from '../ratio/explain.ts';
import type { NextOfSheet } from '../sheet/next/next-of-sheet.ts';
import { actionUnder } from '../stop.ts';
import { isRows, lackingNext } from './lacking-next.ts';
import { questionNext, sheetDoubtNext } from './question-next.ts';
import { readingNext } from './reading-next.ts';

const BUILD: Subject = { of: 'build' };

interface NextGiven {
  readonly closed: boolean;
  readonly stop: readonly StopReason[];
  readonly lacking: readonly Lacking[];
  /** Why nobody runs it as it is, or fits what is planned. */
  readonly notToRun: readonly NotToRun[];
  /** What is still to be said or done at the end of the call. */
  readonly atEnd: readonly Lacking[];
  readonly questions: readonly AssessedQuestion[];
  readonly explained: readonly GroupExplained[];
  /** What the per-valve sheet asks for, where a valve differs from its siblings, and what of it can wait. */
  readonly ofSheet: NextOfSheet;
  /** The measurement of a loose part that settles most, where the call is about one. */
  readonly ofPart: NextAction | undefined;
}

const LIFTED = 'not-to-run:stop:';

/** A stop that was lifted to read its gap again, or parts that are not to be fitted: before anything else is asked. */
function notToRunNext(notToRun: readonly NotToRun[]): NextAction | undefined {
  const first =
    notToRun.find(({ id }) => id.startsWith(LIFTED)) ?? notToRun.find(({ what }) => what === 'fit');
  if (first === undefined) return undefined;
  const lifted = first.id.startsWith(LIFTED);
  return {
    id: `next:${first.id}`,
    action: lifted ? 'read-gap-again' : 'do-not-fit',
    step: lifted ? 'sheet' : 'consequences',
    about: first.about,
    sentence: first.wayOut,
    reason: first.sentence,
    turns: lifted,
  };
}

const WHOLE = 'Everything that was asked for is there.';

const CLOSE: NextAction = {
  id: 'next:notes:close',
  action: 'close',
  step: 'notes',
  about: BUILD,
  sentence: 'Nothing is left to read or to say: close the call.',
  reason: WHOLE,
  turns: false,
};

/** With nothing left to read: what was found is said, then what was promised is kept. */
function endingNext(atEnd: readonly Lacking[]): NextAction {
  const found = lackingNext(atEnd, true);
  return found === undefined ? CLOSE : { ...found, reason: WHOLE };
}

/**
 * The one thing worth most now: under a stop what the stop needs; else a gap whose stop was lifted to read it again, or
 * parts that are not to be fitted; the first question of the call, the doubts of the sheet, what the goal lacks, the test
 * of a strong doubt, what tells a clear odd valve's part from its position, the rows that are left, the reading that
 * tells most, of the engine or of the part, the next step of the goal's plan, and at the end what was found.
 */
export function nextOf({
  closed,
  stop,
  notToRun,
  lacking,
  atEnd,
  questions,
  explained,
  ofSheet,
  ofPart,
}: NextGiven): NextAction | undefined {
  const under = actionUnder(stop);
  if (under !== undefined) return under;
  if (closed) return undefined;
  const first = lacking.filter(({ step }) => step === 'triage');
  const withoutRows = lacking.filter((each) => !isRows(each));
  return (
    notToRunNext(notToRun) ??
    lackingNext(first, true) ??
    sheetDoubtNext(questions) ??
    lackingNext(withoutRows, true) ??
    questionNext(questions) ??
    ofSheet.clear ??
    lackingNext(lacking, true) ??
    ofSheet.later ??
    readingNext(explained) ??
    ofPart ??
    lackingNext(lacking, false) ??
    endingNext(atEnd)
  );
}
