import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { USUAL_TRAVEL } from '../../setting/usual-travel.ts';
import type { AnswerChoice, AssessedQuestion, StopReason } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { BUILD, type KeptSet } from '../common/kept.ts';
import { inches } from '../common/said.ts';
import type { PreloadEvidence, TurnsEvidence } from '../evidence/kept-sums.ts';
import type { AnswerEvidence, Evidence } from '../evidence.ts';
import { type PastGap, pastGapSaid } from './past-gap.ts';
import { offSeat, pastBottom } from './said.ts';

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'Yes, it was turned that far',
    changes: 'The adjuster is backed off, and the turns are kept again, before the engine is turned.',
    leadsTo: done('back the adjuster off to zero lash, and keep the turns again.'),
  },
  {
    code: 'not-found',
    label: 'No, that was only worked out',
    changes: 'The desk may lift the stop: no adjuster stands so.',
  },
];

/** How far it goes was not said: its maker’s figure goes first. */
const MAKERS_FIGURE: AnswerChoice = {
  code: 'makers-figure',
  label: 'Yes, and its maker lets the plunger go that far',
  changes:
    'The desk may lift the stop, with the maker’s figure as the reason; the figure goes into the next sum, and counts for every plunger.',
};

/** A sum whose turns hold a valve open, as it is said and asked about. */
interface TooFar {
  readonly kept: KeptSet;
  readonly sentence: string;
  readonly size: string;
  /** How far its plunger goes was not said. */
  readonly travelUnsaid: boolean;
  /** Entries of the lash log. */
  readonly restsOn: readonly string[];
}

const choicesOf = ({ travelUnsaid }: TooFar): readonly AnswerChoice[] =>
  travelUnsaid ? [...CHOICES, MAKERS_FIGURE] : CHOICES;

function sentenceOf(set: PreloadEvidence, past: number): string {
  if (set.solid)
    return `Do not turn it: the build has solid lifters, and the turns kept hold the valve open by up to ${inches(offSeat(set, past))}.`;
  if (set.travelUnsaid)
    return `Do not turn it: the turns kept press the plunger ${inches(set.preload)}, further than plungers usually go, and may hold the valve open.`;
  return past > EQUAL
    ? `Do not turn it: the turns kept go ${inches(past)} past the plunger’s bottom, and hold the valve open by up to ${inches(offSeat(set, past))}.`
    : 'Do not turn it: the turns kept put the plunger on its bottom, with nothing left for wear or heat.';
}

function sizeOf({ solid, travelUnsaid, travel = 0, preload }: PreloadEvidence): string {
  if (solid) return 'The build says solid lifters: if they are hydraulic, put that right in its description.';
  const goes = travelUnsaid
    ? `Most plungers go no further than ${inches(USUAL_TRAVEL)}`
    : `The plunger goes ${inches(travel)}`;
  return `${goes}, and these turns press it ${inches(preload)}.`;
}

/** Turns that press a plunger onto its bottom, or a solid lifter at all. */
export function tooFarPressed(kept: KeptSet<PreloadEvidence>): TooFar[] {
  const past = pastBottom(kept.set);
  if (past === undefined) return [];
  const { travelUnsaid = false } = kept.set;
  return [{ kept, sentence: sentenceOf(kept.set, past), size: sizeOf(kept.set), travelUnsaid, restsOn: [] }];
}

/** Turns of a solid adjuster past its gap. */
export function tooFarClosed(kept: KeptSet<TurnsEvidence>, found: PastGap | undefined): TooFar[] {
  if (found === undefined) return [];
  const { closes, past, widest, isSure } = found;
  return [
    {
      kept,
      sentence: `Do not turn it: the turns kept close the lash by ${inches(closes)}, ${pastGapSaid(found)}, and ${isSure ? 'hold' : 'may hold'} the valve open by up to ${inches(past)}.`,
      size: 'Solid lifters have no plunger to press: what goes past the gap opens the valve.',
      travelUnsaid: false,
      restsOn: [widest.line.id],
    },
  ];
}

interface Bottomed {
  readonly questions: readonly AssessedQuestion[];
  readonly stop: readonly StopReason[];
}

/** Answered, and lifted by a person. */
const isOver = ({ stop }: Bottomed, { stopsLifted = [] }: Evidence['call']): boolean =>
  stop.every(
    ({ id, entryId, answered }) =>
      answered && stopsLifted.some((lifted) => lifted.stopId === id && lifted.entryId === entryId),
  );

function questionOf(found: TooFar, answers: readonly AnswerEvidence[]): AssessedQuestion {
  const { kept, size, travelUnsaid, restsOn } = found;
  return asked(
    {
      code: 'plunger-bottomed',
      weight: 'strong',
      ask: 'Was the adjuster really turned that far, or was it only worked out?',
      size,
      test: travelUnsaid
        ? 'ask the lifter’s maker how far its plunger goes; else back the adjuster off with the engine left still, and say which it was.'
        : 'back the adjuster off with the engine left still, and say which it was.',
      byLooking: true,
      restsOn,
    },
    { about: BUILD, step: 'adjuster', ...defined({ among: kept.id }), answers, choices: choicesOf(found) },
  );
}

function ofOne(found: TooFar, answers: readonly AnswerEvidence[]): Bottomed {
  const { kept, sentence, travelUnsaid, restsOn } = found;
  const question = questionOf(found, answers);
  const answered = question.answered !== undefined;
  const first = answered
    ? 'What was found is answered.'
    : `${travelUnsaid ? 'Ask the lifter’s maker how far its plunger goes, and answer that. Or, with' : 'With'} nothing turned but the adjuster, back it off, and answer whether it had been turned so far.`;
  return {
    questions: [question],
    stop: [
      {
        id: `stop:plunger-bottomed:${kept.id}`,
        code: 'plunger-bottomed',
        about: BUILD,
        sentence,
        wayOut: `${first} The desk then lifts the stop, with the reason.`,
        wayOutAtBench: `${first} Leave it until the desk has lifted the stop.`,
        answered,
        from: 'readings',
        ...defined({ entryId: kept.id }),
        line: kept.line,
        restsOn,
      },
    ],
  };
}

/**
 * A plunger on its bottom is no cushion any more, and one past it, or an adjuster past its gap, holds the valve open:
 * nobody turns that engine. Turns that are kept again say nothing of what was found on the valve that was turned too far:
 * each sum has its stop until it is answered and a person has lifted it.
 *
 * @param found every sum of its kind, oldest first; nothing where it does not go too far
 */
function standing(
  found: readonly (readonly TooFar[])[],
  { answers, call }: Pick<Evidence, 'answers' | 'call'>,
): Bottomed {
  const all = found.map((each) => each.map((one) => ofOne(one, answers)));
  const each = all.flatMap((ones, index) =>
    ones.filter((one) => index === all.length - 1 || !isOver(one, call)),
  );
  return {
    questions: each.flatMap(({ questions }) => questions),
    stop: each.flatMap(({ stop }) => stop),
  };
}

/** Of each kind of sum the questions and the stops. */
export function bottomed(
  kinds: readonly (readonly (readonly TooFar[])[])[],
  evidence: Pick<Evidence, 'answers' | 'call'>,
): Bottomed {
  const all = kinds.map((found) => standing(found, evidence));
  return {
    questions: all.flatMap(({ questions }) => questions),
    stop: all.flatMap(({ stop }) => stop),
  };
}

/** Of which sums it was answered that no adjuster was turned so far, and whether a person has lifted the stop. */
export const onlyWorkedOut = (
  found: readonly (readonly TooFar[])[],
  { answers, call }: Pick<Evidence, 'answers' | 'call'>,
): { readonly id: string; readonly lifted: boolean }[] =>
  found.flat().flatMap((one) => {
    const raised = ofOne(one, answers);
    const isSo = raised.questions.some((question) => chosenOf(question) === 'not-found');
    return isSo && one.kept.id !== undefined ? [{ id: one.kept.id, lifted: isOver(raised, call) }] : [];
  });
