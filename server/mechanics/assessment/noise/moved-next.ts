import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { NextAction } from '../assessment.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import { isSince } from '../common/since.ts';
import type { Evidence } from '../evidence.ts';
import type { LashValveDetail } from '../lash/detail.ts';
import { nutHasMoved } from '../lash/nut-moved.ts';
import { whyMoved } from '../lash/work.ts';
import { lastSaid, noisyValve } from './answers.ts';
import type { NoiseRecord } from './of-record.ts';

/** What an adjuster that had moved asks for: why it moved, and once it was set again its gap as it is now. */
export interface MovedNext {
  readonly why?: NextAction;
  readonly again?: NextAction;
}

/** It was answered that it had moved, with nothing set since; else the log says so by itself. */
function hasMoved(valve: LashValveDetail, evidence: Evidence, { lash }: NoiseRecord): boolean {
  if (nutHasMoved(valve, lash)) return true;
  const said = lastSaid('noise-nut', evidence);
  const place = noisyValve(evidence);
  const own = place === undefined || placeOf(place) === placeOf(valve);
  const isOpen = !valve.lines.some(({ nut }) => nut === 'held');
  return said?.answer === 'moved' && own && isOpen;
}

/** Set after it was found moved: by the log, else after that was answered. */
function isSetSince({ lines }: LashValveDetail, evidence: Evidence): boolean {
  const moved = lines.findLastIndex(({ nut }) => nut === 'moved');
  if (moved >= 0) return lines.slice(moved + 1).some(({ moment }) => moment === 'set');
  const said = lastSaid('noise-nut', evidence);
  return lines.some((line) => line.moment === 'set' && said !== undefined && isSince(line, said.entry));
}

const ofValve = (valve: LashValveDetail) =>
  ({ about: valveSubject(valve), step: 'adjuster', turns: true }) as const;

/** A gap that grew is asked of already, in the words of what moved. */
function whyAsked(valve: LashValveDetail, { raised }: NoiseRecord): NextAction | undefined {
  const question = raised.find(
    ({ code, about, answered }) =>
      code === 'lash-grew' && answered === undefined && keyOf(about) === keyOf(valveSubject(valve)),
  );
  return question === undefined
    ? undefined
    : {
        ...ofValve(valve),
        id: `next:${question.id}`,
        action: question.code,
        sentence: `${placeOf(valve)}: ${question.test}`,
        reason: question.ask,
      };
}

function whyTold(valve: LashValveDetail, evidence: Evidence): NextAction {
  const { part } = ADJUSTER_WORDS[adjusterKind(evidence.engine)];
  return {
    ...ofValve(valve),
    id: 'next:noise:moved-why',
    action: 'why-moved',
    sentence: whyMoved(valve, evidence),
    reason: `The ${part} of ${placeOf(valve)} has moved: set again without its cause it moves again.`,
  };
}

/** `why`: its gap is on record as it was found, and nothing was set since; `again`: it was set, and nobody looked since. */
export function movedNext(evidence: Evidence, record: NoiseRecord): MovedNext | undefined {
  const place = noisyValve(evidence);
  const scope = record.lash.valves.filter((each) => place === undefined || placeOf(each) === placeOf(place));
  const valve = scope.find((each) => hasMoved(each, evidence, record));
  if (valve === undefined) return undefined;
  const name = placeOf(valve);
  const { part } = ADJUSTER_WORDS[adjusterKind(evidence.engine)];
  return isSetSince(valve, evidence)
    ? {
        again: {
          ...ofValve(valve),
          id: 'next:noise:moved-again',
          action: 'lash-again',
          sentence: `Read the gap of ${name} again, locked and at the same heat, and say whether the lock held.`,
          reason: `The ${part} of ${name} had moved: whether it holds now is not known.`,
        },
      }
    : { why: whyAsked(valve, record) ?? whyTold(valve, evidence) };
}
