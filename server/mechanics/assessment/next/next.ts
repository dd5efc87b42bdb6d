import { defined } from '../../../../shared/defined.ts';
import { DEFAULT_ASSUMPTIONS } from '../../explain-readings/assumptions.ts';
import type { Action } from '../../explain-readings/types.ts';
import type { AssessedQuestion, NextAction, NotToRun, StopReason, Subject } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { placeOf, subjectSaid, upperFirst, valveSubject } from '../common/said.ts';
import type { Lacking } from '../missing/missing.ts';
import { ABOUT_CARD } from '../ratio/conditions.ts';
import type { GroupExplained } from '../ratio/explain.ts';
import { ASK } from '../ratio/ratio-said.ts';
import { readingWorthTaking } from '../ratio/would-tell.ts';
import { actionUnder } from '../stop.ts';
import { isAsked } from './is-asked.ts';

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
  /** What the per-valve sheet asks for, where a valve differs from its siblings. */
  readonly ofSheet: NextAction | undefined;
  /** The measurement of a loose part that settles most, where the call is about one. */
  readonly ofPart: NextAction | undefined;
}

function lackingNext(lacking: readonly Lacking[], must: boolean): NextAction | undefined {
  const found = lacking.find(({ need }) => need.must === must);
  if (found === undefined) return undefined;
  const { step, need } = found;
  return {
    id: `next:${step}:${need.code}`,
    action: need.code,
    step,
    about: BUILD,
    sentence: need.ask,
    ...defined({ sentenceAtBench: need.askAtBench }),
    reason: must ? 'What the call is about waits for it.' : 'It is the next step of what the call is about.',
    turns: need.turns,
  };
}

/** Doubts about what a reading is set against: the reading itself stands. */
const NOT_TAKEN_AGAIN: ReadonlySet<string> = new Set(['card-ratio', 'spring-mixed']);

function againSaid({ code }: AssessedQuestion): string {
  if (ABOUT_CARD.has(code)) return 'put the lobe lift of the card right.';
  return code === 'ratio-not-listed'
    ? 'look the part number up, and say which ratio they are sold as.'
    : 'enter that reading again, or strike it out with the reason.';
}

/** The test of a strong doubt; a reading that was found wrong is entered again first. */
function questionNext(questions: readonly AssessedQuestion[]): NextAction | undefined {
  const open = questions.find((question) => inDoubt(question) && !NOT_TAKEN_AGAIN.has(question.code));
  if (open === undefined) return undefined;
  const again = open.answered?.found === true;
  const of = upperFirst(subjectSaid(open.about));
  const atBench = again ? undefined : open.testAtBench;
  return {
    id: `next:${open.id}`,
    action: open.code,
    step: open.step,
    about: open.about,
    sentence: `${of}: ${again ? againSaid(open) : open.test}`,
    ...(atBench === undefined ? {} : { sentenceAtBench: `${of}: ${atBench}` }),
    reason: open.ask,
    turns: !again && !isAsked(open),
  };
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
    ...defined({ sentenceAtBench: first.wayOutAtBench }),
    reason: first.sentence,
    turns: lifted,
  };
}

const chance = ({ result }: GroupExplained): number =>
  Math.max(0, ...(result?.nominals ?? []).map(({ probability }) => probability));

const MINUTES: Readonly<Partial<Record<Action, number>>> = {
  'lobe-at-lifter': DEFAULT_ASSUMPTIONS.minutesLobeAtLifter,
  'one-more-pass': DEFAULT_ASSUMPTIONS.minutesOneMorePass,
  'rocker-on-another-valve': DEFAULT_ASSUMPTIONS.minutesOtherValve,
};

/** The reading that tells most for its minutes, of the arm that is settled least. */
function readingNext(explained: readonly GroupExplained[]): NextAction | undefined {
  const open = explained
    .flatMap((each) => {
      const action = readingWorthTaking(each);
      return action === undefined ? [] : [{ each, action }];
    })
    .toSorted((a, b) => chance(a.each) - chance(b.each) || (a.each.group.key < b.each.group.key ? -1 : 1))[0];
  if (open === undefined) return undefined;
  const { each, action } = open;
  const weighed = each.result?.nextReading;
  const minutes = weighed?.action === action ? weighed.minutes : MINUTES[action];
  return {
    id: `next:reading:${each.group.key}:${action}`,
    action,
    step: 'ratio',
    about: valveSubject(each.group),
    sentence: `${placeOf(each.group)}: ${ASK[action]}`,
    reason: 'It tells most about the ratio for the time it takes.',
    ...defined({ minutes }),
    turns: action !== 'read-back',
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
 * parts that are not to be fitted; what the goal lacks, the test of a strong doubt, what tells an odd valve's part from
 * its position, the reading that tells most, of the engine or of the part, the next step of the goal's plan, and at the
 * end what was found.
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
  return (
    notToRunNext(notToRun) ??
    lackingNext(lacking, true) ??
    questionNext(questions) ??
    ofSheet ??
    readingNext(explained) ??
    ofPart ??
    lackingNext(lacking, false) ??
    endingNext(atEnd)
  );
}
