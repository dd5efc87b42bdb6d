import { planOf } from '../../../../shared/schemas/goals.ts';
import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { counted, listed, nominalSaid } from '../common/said.ts';
import { isOffSince } from '../common/seats.ts';
import type { Evidence, SetUpEvidence, SheetEvidence } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import { setUpsNow } from '../ratio/read/set-ups.ts';
import { soldRatio } from './stated-ratios.ts';

const SAME = 'same-arms';

const choicesOf = (then: string): readonly AnswerChoice[] => [
  {
    code: 'arms-before',
    label: `With the ${then} arms, before they were changed`,
    changes:
      'A ratio is told of those arms; what a gap leaves with the arms that are on is worked out, and measured.',
  },
  {
    code: SAME,
    label: `With the arms that are on: the ${then} was put right`,
    changes: 'They are readings of the arms that are on.',
  },
];

type Told = { readonly armId?: string; readonly soldAsThen?: number };

/** Read while the arms were sold as another ratio; a mark on the arm itself says more. */
const isOfThen = ({ armId, soldAsThen }: Told, evidence: Evidence): boolean =>
  soldAsThen !== undefined && markOn(evidence, armId) === undefined;

const gapsOfThen = (evidence: Evidence): SheetEvidence[] =>
  evidence.sheet.filter(
    (entry) =>
      entry.standing &&
      entry.arms === 'these' &&
      GAP_KINDS.some((gap) => gap === entry.kind) &&
      isOfThen(entry, evidence),
  );

/**
 * Of a change the arms themselves were changed, and one that is off since was of the old set; else what they are sold as
 * was put right, and holds for all of it.
 */
function ratiosOfThen(evidence: Evidence): SetUpEvidence[] {
  const isChange = planOf(evidence.call.goal).isChange === true;
  // As they are known now: an arm that was named late is the arm all the same.
  const now = new Set(
    setUpsNow(evidence)
      .filter((setUp) => isOfThen(setUp, evidence) && (isChange || isOffSince(setUp, evidence)))
      .map(({ id }) => id),
  );
  return evidence.setUps.filter(({ id }) => now.has(id));
}

/** Lifts of the sheet are of ratios as those of set-ups are. */
function liftsOfThen(evidence: Evidence): SheetEvidence[] {
  const isChange = planOf(evidence.call.goal).isChange === true;
  return evidence.sheet.filter(
    (entry) =>
      entry.standing &&
      entry.arms === 'these' &&
      entry.kind === 'valve-lift' &&
      isOfThen(entry, evidence) &&
      (isChange || isOffSince(entry, evidence)),
  );
}

function askedOf(then: number, evidence: Evidence): AssessedQuestion {
  const { passes } = evidence;
  const sold = soldRatio(evidence)?.value;
  const gaps = gapsOfThen(evidence).filter(({ soldAsThen }) => soldAsThen === then);
  const lifts = liftsOfThen(evidence).filter(({ soldAsThen }) => soldAsThen === then);
  const setUps = ratiosOfThen(evidence).filter(({ soldAsThen }) => soldAsThen === then);
  const name = nominalSaid(then);
  const now = sold === undefined ? 'no ratio' : nominalSaid(sold);
  const were = gaps.length + lifts.length + setUps.length === 1 ? 'was' : 'were';
  const what = listed([
    ...counted('gap', gaps.length),
    ...counted('valve lift', lifts.length),
    ...counted('ratio', setUps.length),
  ]);
  const read = passes.filter(({ standing, setUpId }) => standing && setUps.some(({ id }) => id === setUpId));
  return asked(
    {
      code: 'gap-arms-then',
      weight: 'weak',
      ask: `The arms were sold as ${name} when ${what} ${were} read, and as ${now} now. With which arms was that?`,
      knownBy: 'with which arms the gaps were read',
      size: `Until it is said they count as read with the ${name} arms.`,
      test: 'Ask who read them which arms were on.',
      testAtBench: 'Say which arms were on when they were read.',
      byLooking: true,
      restsOn: [...gaps, ...lifts, ...read].map(({ id }) => id),
    },
    {
      about: { of: 'build' },
      step: 'consequences',
      among: `sold-as-${name}`,
      answers: evidence.answers,
      choices: choicesOf(name),
    },
  );
}

/** With which arms it was read what is older than what the arms are sold as now. */
export function soldThenAsked(evidence: Evidence): AssessedQuestion[] {
  const read = [...gapsOfThen(evidence), ...liftsOfThen(evidence), ...ratiosOfThen(evidence)];
  const ratios = [...new Set(read.flatMap(({ soldAsThen }) => soldAsThen ?? []))].sort((a, b) => a - b);
  return ratios.map((then) => askedOf(then, evidence));
}

/** What was read then was read with the arms of now, as was answered: what they were sold as was put right. */
const arePutRight = (then: number, evidence: Evidence): boolean => chosenOf(askedOf(then, evidence)) === SAME;

/** What the arms that a gap was read with were sold as, where that is not what is on now. */
export function soldThen(entry: SheetEvidence, evidence: Evidence): number | undefined {
  const { soldAsThen } = entry;
  if (soldAsThen === undefined || !gapsOfThen(evidence).includes(entry)) return undefined;
  return arePutRight(soldAsThen, evidence) ? undefined : soldAsThen;
}

type SoldThen = { readonly soldAsThen?: number };

/** Without it, it is held to what the arms are sold as now. */
function ofNow<Each extends SoldThen>(read: Each): Omit<Each, 'soldAsThen'> {
  const { soldAsThen: _, ...rest } = read;
  return rest;
}

/** The same evidence, where only what was read with arms that are off since says what those were sold as; gaps are marked by themselves. */
export function withSoldThen(evidence: Evidence): Evidence {
  const { setUps, sheet } = evidence;
  if ([...setUps, ...sheet].every(({ soldAsThen }) => soldAsThen === undefined)) return evidence;
  const isOff = ({ soldAsThen }: SoldThen): boolean =>
    soldAsThen !== undefined && !arePutRight(soldAsThen, evidence);
  const offSetUps = new Set(ratiosOfThen(evidence).filter(isOff));
  const offLifts = new Set(liftsOfThen(evidence).filter(isOff));
  return {
    ...evidence,
    setUps: setUps.map((setUp) => (offSetUps.has(setUp) ? setUp : ofNow(setUp))),
    sheet: sheet.map((entry) => (entry.kind !== 'valve-lift' || offLifts.has(entry) ? entry : ofNow(entry))),
  };
}
