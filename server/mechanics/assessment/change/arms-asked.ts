import { NOMINAL_RATIOS } from '../../../../shared/schemas/method.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { toSay } from '../common/lack.ts';
import { byPlace, listed, nominalSaid, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { markOn } from '../ratio/stamp.ts';
import type { GapReading } from '../sheet/gap-found-off.ts';
import { soldRatio } from './stated-ratios.ts';

/* What a ratio makes of a gap hangs on the ratio that the gap was read with. */

/** The question which ratio that was. */
const RATIO_THEN = 'gap-ratio-then';

/** What a gap waits for that was read with arms of which nobody said what they are. */
export const WHICH_RATIO = toSay('which-ratio', 'which ratio the arms had that it was read with', RATIO_THEN);

const NOT_KNOWN = 'not-known';

/** The names that the trade has for ratios, with what this call has named. */
function ratiosOf(evidence: Evidence): number[] {
  const { card, arms, rockers } = evidence;
  const stamps = arms.flatMap(({ id }) => markOn(evidence, id) ?? []);
  const named = [soldRatio(evidence)?.value, rockers.planned, card.assumedRatio, ...stamps];
  return [...NOMINAL_RATIOS, ...named.flatMap((each) => each ?? [])].toSorted((a, b) => a - b);
}

const choicesOf = (evidence: Evidence): AnswerChoice[] => [
  ...[...new Set(ratiosOf(evidence).map(nominalSaid))].map((name) => ({
    code: name,
    label: `Arms of ${name}`,
    changes: 'The gap is worked out from that ratio.',
  })),
  {
    code: NOT_KNOWN,
    label: 'Nobody knows',
    changes: 'The gap is measured with the arms that are to run.',
  },
];

/** Asked once for the build: the arms that came off an engine were one set. */
function ratioAsked(evidence: Evidence, gaps: readonly GapReading[] = []): AssessedQuestion {
  const places = [...new Set(gaps.toSorted(byPlace).map(placeOf))];
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
      test: 'Ask who read it, and look at the mark on an arm that came off.',
      testAtBench: 'Look at the mark on an arm that came off.',
      byLooking: true,
      restsOn: [...new Set(gaps.map(({ id }) => id))],
    },
    {
      about: { of: 'build' },
      step: 'consequences',
      answers: evidence.answers,
      choices: choicesOf(evidence),
    },
  );
}

/** The question, while there are such gaps. */
export const ratioThenAsked = (evidence: Evidence, gaps: readonly GapReading[]): AssessedQuestion[] =>
  gaps.length === 0 ? [] : [ratioAsked(evidence, gaps)];

/** Somebody was asked, and nobody knows: the gap is measured. */
export const isRatioUnknown = (evidence: Evidence): boolean => chosenOf(ratioAsked(evidence)) === NOT_KNOWN;

/** The ratio that it was, as was answered. */
export function ratioSaidThen(evidence: Evidence): number | undefined {
  const said = chosenOf(ratioAsked(evidence));
  return said === undefined || said === NOT_KNOWN ? undefined : Number(said);
}
