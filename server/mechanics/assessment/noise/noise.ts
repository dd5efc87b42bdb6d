import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { isNoiseQuestion, NOT_KNOWN, type NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { type AdjusterKind, adjusterKind } from '../../lash/adjuster-words.ts';
import { CAUSES } from '../../noise/causes.ts';
import { WEIGHS } from '../../noise/effects.ts';
import { causeSaid } from '../../noise/noise-words.ts';
import { type Candidate, contenders, type Fact, HOW_ORDERED, remaining, weigh } from '../../noise/weigh.ts';
import type { AssessedQuestion, Headline, NextAction, NotToRun, Subject } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import type { LashValveDetail } from '../lash/detail.ts';
import { nutHasMoved, nutLine } from '../lash/nut-moved.ts';
import { SEAT_LOOKED } from '../lash/seat-looked.ts';
import { lastSaid, noisyValve, QUESTIONS } from './answers.ts';
import { noiseQuestions } from './asked.ts';
import { openChecks, partingCheck } from './checks.ts';
import { isDamaged } from './damage-told.ts';
import type { NoiseCandidate, NoiseDetail, SaidFact } from './detail.ts';
import { elsewhereTold } from './elsewhere-told.ts';
import { factsOfAnswers } from './facts.ts';
import { lockTold } from './lock-told.ts';
import { movedNext } from './moved-next.ts';
import { foundSaid, noiseNotToRun } from './not-to-run.ts';
import { nutTold } from './nut-told.ts';
import { gapsRead } from './of-gaps.ts';
import { causesOf, isAskedOf, isMountingOpen } from './of-gear.ts';
import { lobeOf } from './of-lobe.ts';
import { factsOfRecord, hasGrown, type NoiseRecord, placesAbout } from './of-record.ts';
import { isSeatAsked, seatsRaised } from './of-seat.ts';
import { oilNext } from './oil-low.ts';
import { noiseSaid } from './said.ts';
import { noiseStops } from './stops.ts';

/** The goal is about it, a gap grew or a nut moved on a call about adjusters, or something of it was answered. */
function isActive(evidence: Evidence, { lash }: NoiseRecord): boolean {
  const { logFirst, asks } = planOf(evidence.call.goal);
  const answered = QUESTIONS.some((question) => lastSaid(question, evidence) !== undefined);
  const loose = lash.valves.some((valve) => hasGrown(valve, lash) || nutHasMoved(valve, lash));
  return logFirst === true || answered || (asks.includes('noise') && loose);
}

/** The call is about a noise or a failure, and not about a gap that was found to have grown. */
const isOfNoise = ({ call }: Evidence): boolean => planOf(call.goal).logFirst === true;

/** Found as it is, and not at another heat than it was set at; what it was set to is asked, not read. */
const isFound = ({ growth, lines }: LashValveDetail): boolean =>
  growth === undefined ? lines.some(({ moment }) => moment === 'found') : !growth.heatDiffers;

/** The lobes that it is about; of which valve nobody can tell, those of the whole sheet. */
function areLobesRead(sheet: NoiseRecord['sheet'], about: readonly ValvePlace[]): boolean {
  const asked = about.length > 0 ? about : sheet.rows;
  return asked.length > 0 && asked.every((each) => lobeOf(sheet, each) !== undefined);
}

/** Questions that were answered, and what the record answers by itself. */
function knownOf(evidence: Evidence, record: NoiseRecord, place: ValvePlace | undefined): string[] {
  const ofLog = isActive(evidence, record) && !isOfNoise(evidence);
  const { lash, sheet } = record;
  const answered = QUESTIONS.filter(
    (question) => lastSaid(question, evidence) !== undefined && !isOpenStill(question, evidence),
  );
  const about = placesAbout(record, place);
  const logged = lash.valves.filter((valve) => place === undefined || placeOf(valve) === placeOf(place));
  const seats = seatsRaised(record.raised, (each) => place === undefined || placeOf(each) === placeOf(place));
  const has = (code: string, there: boolean): string[] => (there ? [code] : []);
  return [
    ...new Set([
      ...answered,
      ...has(
        'noise-nut',
        logged.some((valve) => nutLine(valve) !== undefined),
      ),
      ...has('noise-history', logged.some(isHistory)),
      // Nobody speaks of a noise: the valve is the one of the log. Where nothing was told at all, the first question is it.
      ...has('noise-which', ofLog && about.length === 1),
      ...has('lifter', evidence.engine.lifter !== undefined || isLashSet(evidence, lash)),
      ...has('mounting', !isMountingOpen(evidence)),
      ...has('lash', logged.some(isFound)),
      ...has('touching', about.length > 0 && about.every((each) => gapsRead(sheet, each))),
      ...has('lobe', areLobesRead(sheet, about)),
      ...has(SEAT_LOOKED, seats.length > 0 && !seats.some(isSeatAsked)),
    ]),
  ];
}

/** Of these the question is whether the lash is set: one that was set answers it. */
const SET_OR_HYDRAULIC: ReadonlySet<string> = new Set(['cam-rocker', 'finger-follower']);

const isLashSet = ({ engine }: Evidence, { valves }: NoiseRecord['lash']): boolean =>
  SET_OR_HYDRAULIC.has(engine.gear ?? '') &&
  valves.some(({ lines }) => lines.some(({ moment }) => moment === 'set'));

/** Set, and found since: what became of it is on record, and is not asked. */
const isHistory = ({ lines }: LashValveDetail): boolean => {
  const set = lines.findIndex(({ moment }) => moment === 'set');
  return set >= 0 && lines.slice(set).some(({ moment }) => moment === 'found');
};

/** What is seen only once a part is off: the gap as it was found went with it. */
const PARTS_OFF = QUESTIONS.filter((question) => WEIGHS[question].effort === 'parts-off');

const arePartsOff = (evidence: Evidence): boolean =>
  evidence.call.engineState === 'apart' ||
  isDamaged(evidence) ||
  PARTS_OFF.some((question) => {
    const answer = lastSaid(question, evidence)?.answer;
    return answer !== undefined && answer !== NOT_KNOWN;
  });

/** Signs of damage that nobody knows of are asked after until somebody has looked. */
const isOpenStill = (question: NoiseQuestion, evidence: Evidence): boolean =>
  question === 'noise-signs' && lastSaid(question, evidence)?.answer === NOT_KNOWN;

const saidFact = ({ key, text, restsOn }: Fact): SaidFact => ({ key, text, restsOn });

const shown = (
  { cause, seen, ...facts }: Candidate,
  left: readonly Candidate[],
  kind: AdjusterKind,
): NoiseCandidate => ({
  cause,
  said: causeSaid(cause, kind),
  source: CAUSES[cause].source,
  for: facts.for.map(saidFact),
  against: facts.against.map(saidFact),
  seen,
  remains: left.some((each) => each.cause === cause),
});

function nearestOf(
  left: readonly Candidate[],
  open: ReturnType<typeof openChecks>,
  kind: AdjusterKind,
): NoiseDetail['nearest'] {
  const [a, b] = left;
  if (a === undefined || b === undefined) return undefined;
  const check = partingCheck(open, [a.cause, b.cause]);
  return check === undefined
    ? undefined
    : { causes: [causeSaid(a.cause, kind), causeSaid(b.cause, kind)], check };
}

/** What is looked at or asked to tell the causes that are left from one another. */
const checksOf = (
  evidence: Evidence,
  left: readonly Candidate[],
  known: readonly string[],
  place: ValvePlace | undefined,
): ReturnType<typeof openChecks> =>
  openChecks(
    contenders(left).map(({ cause }) => cause),
    new Set(known),
    {
      place,
      gear: evidence.engine.gear ?? 'pushrod',
      adjuster: adjusterKind(evidence.engine),
      suspected: left.filter((each) => each.for.length > 0).map(({ cause }) => cause),
      asked: isOpenStill('noise-signs', evidence),
      hydraulic: isHydraulicLifter(evidence.engine.lifter),
      partsOff: arePartsOff(evidence),
      isAsked: (question) =>
        isAskedOf(evidence)(question) && (isOfNoise(evidence) || !OF_NOISE.has(question)),
    },
  );

/** What the lash log answers by itself is not asked beside it. */
const OF_LOG: ReadonlySet<string> = new Set(['noise-history', 'noise-nut', 'noise-which']);

/** What is asked of a noise alone: where none was told of there is none to ask after. */
const OF_NOISE: ReadonlySet<string> = new Set(['noise-heat', 'noise-hours', 'noise-speed']);

/** Questions that this engine and its valve gear are asked; what became of a gap and its nut only where no line tells it. */
function askedOf(evidence: Evidence, known: readonly string[]): AssessedQuestion[] {
  const isAsked = isAskedOf(evidence);
  return noiseQuestions(evidence).filter(
    ({ code, answered }) =>
      answered !== undefined ||
      !isNoiseQuestion(code) ||
      (isAsked(code) &&
        !(OF_LOG.has(code) && known.includes(code)) &&
        !(OF_NOISE.has(code) && !isOfNoise(evidence))),
  );
}

/** Nothing is left to ask, look at or read, and something was answered: that nothing points to a cause is told too. */
const isAllAsked = (evidence: Evidence, open: ReturnType<typeof openChecks>): boolean =>
  open.length === 0 && QUESTIONS.some((question) => lastSaid(question, evidence) !== undefined);

/** What is said of a noise, and what is not run until its cause is found. */
export interface NoisePart extends PartSaid<NoiseDetail> {
  readonly notToRun: readonly NotToRun[];
  /** What is put right before anything is read. */
  readonly oil?: NextAction;
  /** What was answered one way and the lash log has another way: what counts hangs on it. */
  readonly contrary: readonly AssessedQuestion[];
}

/** Causes of noise, a loosening adjuster or a failure: candidates with their evidence, and what would part them. */
export function noisePart(evidence: Evidence, record: NoiseRecord): NoisePart {
  const active = isActive(evidence, record);
  const place = noisyValve(evidence);
  const nut = nutTold(evidence, record);
  const lock = lockTold(evidence, record);
  const elsewhere = elsewhereTold(evidence, record);
  const contrary = [elsewhere, nut.question, lock.question].flatMap((each) => each ?? []);
  const answers = factsOfAnswers(evidence, nut, lock);
  const read = factsOfRecord(record, place, nut);
  const facts = [...answers, ...read];
  // No answer about a noise speaks for a seat: it is a cause once a gap closed.
  const closes =
    seatsRaised(record.raised, (each) => place === undefined || placeOf(each) === placeOf(place)).length > 0;
  const candidates = weigh(
    facts,
    causesOf(evidence).filter((cause) => cause !== 'seat' || closes),
  );
  const left = remaining(candidates);
  const known = knownOf(evidence, record, place);
  const open = checksOf(evidence, left, known, place);
  const kind = adjusterKind(evidence.engine);
  const nearest = nearestOf(left, open, kind);
  const questions = askedOf(evidence, known);
  const about: Subject = place === undefined ? { of: 'build' } : valveSubject(place);
  const tells = nearest === undefined ? undefined : open[0]?.check;
  const said = noiseSaid(left, foundSaid(evidence), tells, kind);
  const headline: Headline = { id: 'headline:noise', about, step: 'noise', sentence: said };
  return {
    quantities: [],
    judgements: [],
    questions: active ? [...questions, ...contrary] : [],
    stop: noiseStops(evidence),
    contrary: active ? contrary : [],
    ...defined({ oil: active ? oilNext(evidence) : undefined }),
    notToRun: active ? noiseNotToRun(evidence, record) : [],
    headlines: active && (facts.length > 0 || isAllAsked(evidence, open)) ? [headline] : [],
    detail: {
      active,
      damaged: isDamaged(evidence),
      ...defined({ place, nearest }),
      questions,
      known,
      facts: facts.map(saidFact),
      candidates: candidates.map((each) => shown(each, left, kind)),
      howOrdered: HOW_ORDERED,
      checks: open.map(({ check }) => check),
      ...defined({
        moved: isHydraulicLifter(evidence.engine.lifter) ? undefined : movedNext(evidence, record),
      }),
    },
  };
}
