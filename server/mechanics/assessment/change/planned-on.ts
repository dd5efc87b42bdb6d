import { planOf } from '../../../../shared/schemas/goals.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { forSide, plansOf } from '../common/plans.ts';
import { nominalSaid, placeOf, ratioSaid, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import { ORDINARY, WITHIN } from '../ratio/compared/bands.ts';
import { meanOf } from '../ratio/read/passes.ts';
import { type SetUpRead, setUpsRead } from '../ratio/read/set-up-read.ts';
import { soldRatio } from './stated-ratios.ts';

/* Of a change a ratio may have been read with the new arms on already, though none is on record. */

interface Fits {
  readonly read: SetUpRead;
  readonly ratio: number;
  readonly plan: number;
  readonly sold: number;
}

const off = (ratio: number, from: number): number => Math.abs(ratio / from - 1);

/** A reading of no named arm that is level with a plan, and so far off what they are sold as that it would be doubted. */
function fitsPlan(read: SetUpRead, evidence: Evidence): Fits[] {
  const { setUp, valve, lobe } = read;
  const sold = soldRatio(evidence)?.value;
  const isOpen = setUp.spring === 'light' && setUp.lash === 'zero' && setUp.soldAsThen === undefined;
  if (sold === undefined || !isOpen || markOn(evidence, setUp.armId) !== undefined) return [];
  if (lobe.value === undefined || lobe.value <= 0 || valve.used.length === 0) return [];
  const ratio = meanOf(valve.used) / lobe.value;
  if (off(ratio, sold) <= ORDINARY) return [];
  const [plan] = plansOf(forSide(evidence, sideOfValve(setUp.valve)))
    .filter((each) => off(ratio, each) <= WITHIN)
    .toSorted((a, b) => off(ratio, a) - off(ratio, b));
  return plan === undefined ? [] : [{ read, ratio, plan, sold }];
}

function allThatFit(evidence: Evidence): Fits[] {
  const { call, engine } = evidence;
  if (planOf(call.goal).isChange !== true || (engine.gear ?? 'pushrod') !== 'pushrod') return [];
  return setUpsRead(evidence).flatMap((read) => fitsPlan(read, evidence));
}

const PLANNED = 'planned';

function askedOf(
  { read: { setUp, valve }, ratio, plan, sold }: Fits,
  { answers }: Evidence,
): AssessedQuestion {
  const [planned, old] = [nominalSaid(plan), nominalSaid(sold)];
  return asked(
    {
      code: 'planned-arm-on',
      weight: 'weak',
      ask: `${placeOf(setUp)} reads ${ratioSaid(ratio)}: level with the planned ${planned}, and far off the ${old} they are sold as. Was the new arm on?`,
      knownBy: 'whether the planned arm was on',
      size: `Until it is said it counts as read with the planned ${planned}.`,
      test: 'Ask who read it which arm was on, and read its mark.',
      testAtBench: 'Say which arm was on, and read its mark.',
      byLooking: true,
      restsOn: valve.used.map(({ id }) => id),
    },
    {
      about: valveSubject(setUp),
      step: 'consequences',
      among: `set-up-${setUp.number}`,
      answers,
      choices: [
        {
          code: PLANNED,
          label: `Yes: the planned ${planned} was on`,
          changes: `It is the ratio of the ${planned}, and the gaps are worked out with it.`,
        },
        {
          code: 'old',
          label: `No: the ${old} was on`,
          changes: `It is set against the ${old}, and what makes it so far off is asked.`,
        },
      ],
    },
  );
}

/** Whether the planned arm was on, of every reading that is level with it and not with what they are sold as. */
export const plannedOnAsked = (evidence: Evidence): AssessedQuestion[] =>
  allThatFit(evidence).map((fits) => askedOf(fits, evidence));

/** The same evidence, where those readings are of the planned arm, unless the old one was said to be on. */
export function withPlannedOn(evidence: Evidence): Evidence {
  const plans = new Map(
    allThatFit(evidence)
      .filter((fits) => (chosenOf(askedOf(fits, evidence)) ?? PLANNED) === PLANNED)
      .map(({ read, plan }) => [read.setUp.id, plan]),
  );
  if (plans.size === 0) return evidence;
  return {
    ...evidence,
    setUps: evidence.setUps.map((setUp) => {
      const plan = plans.get(setUp.id);
      return plan === undefined ? setUp : { ...setUp, soldAsThen: plan };
    }),
  };
}
