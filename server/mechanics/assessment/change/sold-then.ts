import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { nominalSaid } from '../common/said.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { markOn } from '../ratio/stamp.ts';
import { soldRatio } from './stated-ratios.ts';

const SAME = 'same-arms';

const choicesOf = (then: string): readonly AnswerChoice[] => [
  {
    code: 'arms-before',
    label: `With the ${then} arms, before they were changed`,
    changes: 'What they leave with the arms that are on is worked out from them, and measured.',
  },
  {
    code: SAME,
    label: `With the arms that are on: the ${then} was put right`,
    changes: 'They are gaps of the arms that are on.',
  },
];

/** Gaps that were read while the arms were sold as another ratio; a mark on the arm itself says more. */
const isOfThen = (entry: SheetEvidence, evidence: Evidence): boolean =>
  entry.standing &&
  entry.arms === 'these' &&
  entry.soldAsThen !== undefined &&
  GAP_KINDS.some((gap) => gap === entry.kind) &&
  markOn(evidence, entry.armId) === undefined;

function askedOf(then: number, gaps: readonly SheetEvidence[], evidence: Evidence): AssessedQuestion {
  const name = nominalSaid(then);
  const sold = soldRatio(evidence)?.value;
  const now = sold === undefined ? 'no ratio' : nominalSaid(sold);
  return asked(
    {
      code: 'gap-arms-then',
      weight: 'weak',
      ask: `The arms were sold as ${name} when ${gaps.length === 1 ? 'a gap was' : `${gaps.length} gaps were`} read, and as ${now} now. With which arms was that?`,
      knownBy: 'with which arms the gaps were read',
      size: `Until it is said they count as read with the ${name} arms.`,
      test: 'Ask who read them which arms were on.',
      testAtBench: 'Say which arms were on when they were read.',
      byLooking: true,
      restsOn: gaps.map(({ id }) => id),
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

/** With which arms gaps were read that are older than what the arms are sold as now. */
export function soldThenAsked(evidence: Evidence): AssessedQuestion[] {
  const gaps = evidence.sheet.filter((entry) => isOfThen(entry, evidence));
  const ratios = [...new Set(gaps.flatMap(({ soldAsThen }) => soldAsThen ?? []))].sort((a, b) => a - b);
  return ratios.map((then) =>
    askedOf(
      then,
      gaps.filter(({ soldAsThen }) => soldAsThen === then),
      evidence,
    ),
  );
}

/** What the arms that a gap was read with were sold as, where that is not what is on now. */
export function soldThen(entry: SheetEvidence, evidence: Evidence): number | undefined {
  const { soldAsThen } = entry;
  if (soldAsThen === undefined || !isOfThen(entry, evidence)) return undefined;
  return chosenOf(askedOf(soldAsThen, [entry], evidence)) === SAME ? undefined : soldAsThen;
}
