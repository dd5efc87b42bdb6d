import { NOMINAL_RATIOS } from '../../../../shared/schemas/method.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked, partsOfId } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { toSay } from '../common/lack.ts';
import { byPlace, listed, nominalSaid, placeOf } from '../common/said.ts';
import { ratioNamedIn } from '../common/stamp-read.ts';
import type { AnswerEvidence, Evidence, Side } from '../evidence.ts';
import type { GapReading } from '../gaps/gap-found-off.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import { once } from './groups.ts';
import { soldRatio } from './stated-ratios.ts';

/* What a ratio makes of a gap hangs on the ratio that the gap was read with. */

/** The question which ratio that was. */
const RATIO_THEN = 'gap-ratio-then';

/** What a gap waits for that was read with arms of which nobody said what they are. */
export const WHICH_RATIO = toSay('which-ratio', 'which ratio the arms had that it was read with', RATIO_THEN);

const NOT_KNOWN = 'not-known';

const ANOTHER = 'another';

/** The names that the trade has for ratios, with what this call has named. */
function ratiosOf(evidence: Evidence): number[] {
  const { card, arms, rockers } = evidence;
  const stamps = arms.flatMap(({ id }) => markOn(evidence, id) ?? []);
  const named = [
    soldRatio(evidence)?.value,
    rockers.planned,
    rockers.plannedExhaust,
    card.assumedRatio,
    ...stamps,
  ];
  return [...NOMINAL_RATIOS, ...named.flatMap((each) => each ?? [])];
}

/** The ratio that an answer has in its words: it stays said, whatever the call names later. */
const ratioIn = ({ answer }: Pick<AnswerEvidence, 'answer'>): number | undefined => ratioNamedIn(answer);

/** What was answered of this side by its figure. */
const answeredRatios = ({ answers }: Evidence, side: Side): number[] =>
  answers.flatMap((answer) => {
    const of = partsOfId(answer.questionId);
    return of?.code === RATIO_THEN && of.about === side ? (ratioIn(answer) ?? []) : [];
  });

const choicesOf = (evidence: Evidence, side: Side): AnswerChoice[] => [
  ...once(
    [...ratiosOf(evidence), ...answeredRatios(evidence, side)].toSorted((a, b) => a - b).map(nominalSaid),
  ).map((name) => ({
    code: name,
    label: `Arms of ${name}`,
    changes: 'The gap is worked out from that ratio.',
  })),
  {
    code: ANOTHER,
    label: 'Arms of another ratio: say it in plain words',
    changes: 'The gap is worked out from that ratio, once it is said.',
  },
  {
    code: NOT_KNOWN,
    label: 'Nobody knows',
    changes: 'The gap is measured with the arms that are to run.',
  },
];

/** Asked once for each side: the arms that came off one side of an engine were one set. */
function ratioAsked(evidence: Evidence, side: Side, gaps: readonly GapReading[] = []): AssessedQuestion {
  const places = once(gaps.toSorted(byPlace).map(placeOf));
  const isOne = new Set(gaps.map(({ id }) => id)).size === 1;
  const card = evidence.card.assumedRatio;
  const until = card === undefined ? '' : ` The ${nominalSaid(card)} the card assumes says nothing of it.`;
  return asked(
    {
      code: RATIO_THEN,
      weight: 'weak',
      ask: `Which ratio had the arms that were on before, when ${isOne ? 'the gap' : 'the gaps'} of ${listed(places)} ${isOne ? 'was' : 'were'} read?`,
      knownBy: RATIO_THEN,
      size: `What another ratio leaves of a gap hangs on that.${until}`,
      test: 'ask who read it, and look at the mark on an arm that came off.',
      testAtBench: 'Look at the mark on an arm that came off.',
      byLooking: true,
      restsOn: once(gaps.map(({ id }) => id)),
    },
    {
      about: { of: 'side', valve: side },
      step: 'consequences',
      answers: evidence.answers,
      choices: choicesOf(evidence, side),
    },
  );
}

/** The question of each side that has such gaps. */
export const ratioThenAsked = (evidence: Evidence, gaps: readonly GapReading[]): AssessedQuestion[] =>
  SIDES.flatMap((side) => {
    const own = gaps.filter(({ valve }) => sideOfValve(valve) === side);
    return own.length === 0 ? [] : [ratioAsked(evidence, side, own)];
  });

/** Somebody was asked, and nobody knows: the gap is measured. */
export const isRatioUnknown = (evidence: Evidence, side: Side): boolean =>
  chosenOf(ratioAsked(evidence, side)) === NOT_KNOWN;

/** The ratio that it was on that side, as was answered. */
export function ratioSaidThen(evidence: Evidence, side: Side): number | undefined {
  const question = ratioAsked(evidence, side);
  return question.answered === undefined || chosenOf(question) === NOT_KNOWN
    ? undefined
    : ratioIn(question.answered);
}
