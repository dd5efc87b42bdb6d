import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { USUAL_TRAVEL } from '../../setting/usual-travel.ts';
import type { AnswerChoice, AssessedQuestion, StopReason } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches } from '../common/said.ts';
import type { AnswerEvidence, Evidence } from '../evidence.ts';
import type { PreloadEvidence } from './evidence.ts';
import { BUILD, type KeptSet } from './kept.ts';
import { offSeat, pastBottom } from './said.ts';

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'Yes, it was turned that far',
    changes: 'The adjuster is backed off, and the turns are kept again, before the engine is turned.',
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

const choicesOf = ({ travelUnsaid }: PreloadEvidence): readonly AnswerChoice[] =>
  travelUnsaid === true ? [...CHOICES, MAKERS_FIGURE] : CHOICES;

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

interface Bottomed {
  readonly questions: readonly AssessedQuestion[];
  readonly stop: readonly StopReason[];
}

const NONE: Bottomed = { questions: [], stop: [] };

const idOf = ({ id }: KeptSet): string => (id === undefined ? '' : `:${id}`);

/** Answered, and lifted by a person. */
const isOver = ({ stop }: Bottomed, { stopsLifted = [] }: Evidence['call']): boolean =>
  stop.every(
    ({ id, entryId, answered }) =>
      answered && stopsLifted.some((lifted) => lifted.stopId === id && lifted.entryId === entryId),
  );

function questionOf(
  { id, set }: KeptSet<PreloadEvidence>,
  answers: readonly AnswerEvidence[],
): AssessedQuestion {
  return asked(
    {
      code: 'plunger-bottomed',
      weight: 'strong',
      ask: 'Was the adjuster really turned that far, or was it only worked out?',
      size: sizeOf(set),
      test:
        set.travelUnsaid === true
          ? 'ask the lifter’s maker how far its plunger goes; else back the adjuster off with the engine left still, and say which it was.'
          : 'back the adjuster off with the engine left still, and say which it was.',
      byLooking: true,
      restsOn: [],
    },
    { about: BUILD, step: 'adjuster', ...defined({ among: id }), answers, choices: choicesOf(set) },
  );
}

function ofOne(kept: KeptSet<PreloadEvidence>, answers: readonly AnswerEvidence[]): Bottomed {
  const past = pastBottom(kept.set);
  if (past === undefined) return NONE;
  const put = questionOf(kept, answers);
  // The maker’s word settles it: nobody is asked again.
  const question: AssessedQuestion = chosenOf(put) === MAKERS_FIGURE.code ? { ...put, weight: 'weak' } : put;
  const answered = question.answered !== undefined;
  const first = answered
    ? 'What was found is answered.'
    : `${kept.set.travelUnsaid === true ? 'Ask the lifter’s maker how far its plunger goes, and answer that. Or, with' : 'With'} nothing turned but the adjuster, back it off, and answer whether it had been turned so far.`;
  return {
    questions: [question],
    stop: [
      {
        id: `stop:plunger-bottomed${idOf(kept)}`,
        code: 'plunger-bottomed',
        about: BUILD,
        sentence: sentenceOf(kept.set, past),
        wayOut: `${first} The desk then lifts the stop, with the reason.`,
        wayOutAtBench: `${first} Leave it until the desk has lifted the stop.`,
        answered,
        from: 'readings',
        ...defined({ entryId: kept.id }),
        line: kept.line,
        restsOn: [],
      },
    ],
  };
}

/**
 * A plunger on its bottom is no cushion any more, and one past it holds the valve open: nobody turns that engine. Turns
 * that are kept again say nothing of what was found on the valve that was turned too far: each sum has its stop until it
 * is answered and a person has lifted it.
 */
export function bottomed(
  preloads: readonly KeptSet<PreloadEvidence>[],
  { answers, call }: Pick<Evidence, 'answers' | 'call'>,
): Bottomed {
  const all = preloads.map((kept) => ofOne(kept, answers));
  const each = all.filter((one, index) => index === all.length - 1 || !isOver(one, call));
  return {
    questions: each.flatMap(({ questions }) => questions),
    stop: each.flatMap(({ stop }) => stop),
  };
}
