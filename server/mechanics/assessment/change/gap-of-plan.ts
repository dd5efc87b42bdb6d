import { planOf } from '../../../../shared/schemas/goals.ts';
import { GAP_KINDS, SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { gapSaid } from '../common/gap-said.ts';
import { forSide, plansOf } from '../common/plans.ts';
import { byId, nominalSaid, placeOf, valveSubject } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { soldRatio } from './stated-ratios.ts';

/*
 * Of a change a gap may have been read with the arms before and then once more with others, of which nobody said which:
 * those that are planned may have been on already.
 */

const isGap = ({ kind }: SheetEvidence): boolean => GAP_KINDS.some((gap) => gap === kind);

/** Nothing says which arm it was read with. */
const isUnnamed = ({ armId, comesOff, putOnLater, soldAsThen }: SheetEvidence): boolean =>
  armId === undefined && comesOff === undefined && putOnLater === undefined && soldAsThen === undefined;

/** The plan whose arms may have been on when it was read. */
function planThen(entry: SheetEvidence, evidence: Evidence): number | undefined {
  const { call, sheet } = evidence;
  if (planOf(call.goal).isChange !== true || !entry.standing || entry.arms === 'before') return undefined;
  if (!isGap(entry) || !isUnnamed(entry)) return undefined;
  const hasBefore = sheet.some(
    (each) =>
      each.standing && each.arms === 'before' && each.kind === entry.kind && placeOf(each) === placeOf(entry),
  );
  const [plan] = plansOf(forSide(evidence, sideOfValve(entry.valve)));
  const sold = soldRatio(evidence)?.value;
  return !hasBefore || plan === undefined || sold === undefined || sameRatio(plan, sold) ? undefined : plan;
}

const PLANNED = 'planned';

function askedOf(entry: SheetEvidence, plan: number, { answers }: Evidence): AssessedQuestion {
  const { reading } = entry;
  const figure = gapSaid(reading.value === undefined ? reading : { value: reading.value });
  const planned = nominalSaid(plan);
  return asked(
    {
      code: 'gap-arms-then',
      weight: 'strong',
      ask: `${SHEET_KINDS[entry.kind]} on ${placeOf(entry)} was read with the arms before, and ${figure} with others. Was the planned ${planned} on?`,
      knownBy: 'whether the planned arm was on',
      size: 'Until it is said, it counts as read with the arms that are on now.',
      test: 'Ask who read it which arm was on.',
      testAtBench: 'Say which arm was on when it was read.',
      byLooking: true,
      restsOn: [entry.id],
    },
    {
      about: valveSubject(entry),
      step: 'consequences',
      among: entry.id,
      answers,
      choices: [
        {
          code: PLANNED,
          label: `Yes: the planned ${planned} was on`,
          changes: `It is the gap with the ${planned}, as it was read.`,
        },
        {
          code: 'old',
          label: 'No: the arms that are on now',
          changes: `What it leaves with the ${planned} is worked out, and measured.`,
        },
      ],
    },
  );
}

/** With which arms a gap was read that was read with those before as well. */
export const gapOfPlanAsked = (evidence: Evidence): AssessedQuestion[] =>
  evidence.sheet.toSorted(byId).flatMap((entry) => {
    const plan = planThen(entry, evidence);
    return plan === undefined ? [] : [askedOf(entry, plan, evidence)];
  });

/** The plan of which it was said that its arms were on. */
export function planSaidOf(entry: SheetEvidence, evidence: Evidence): number | undefined {
  const plan = planThen(entry, evidence);
  return plan !== undefined && chosenOf(askedOf(entry, plan, evidence)) === PLANNED ? plan : undefined;
}
