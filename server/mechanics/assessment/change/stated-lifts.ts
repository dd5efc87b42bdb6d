import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { SIDES } from '../../../../shared/sides.ts';
import type { Headline } from '../assessment.ts';
import { plansOf } from '../common/plans.ts';
import { inches, listed, nominalSaid } from '../common/said.ts';
import type { Evidence, PassEvidence } from '../evidence.ts';

const of = ({ passes }: Evidence, kind: PassEvidence['kind']): string[] => [
  ...new Set(
    passes.filter((each) => each.standing && each.kind === kind).map(({ readAs }) => asEntered(readAs)),
  ),
];

/** Lifts that somebody stated, or that the card has without the lobe under them. */
function liftsSaid(evidence: Evidence): string | undefined {
  const [lobes, lifts] = [of(evidence, 'stated-lobe-lift'), of(evidence, 'stated-valve-lift')];
  const stated = [
    ...(lobes.length === 0 ? [] : [`a lobe lift of ${listed(lobes)}`]),
    ...(lifts.length === 0 ? [] : [`a valve lift of ${listed(lifts)}`]),
  ];
  if (stated.length > 0)
    return `${listed(stated)} ${stated.length > 1 ? 'were' : 'was'} stated, and read by nobody`;
  const card = SIDES.flatMap((side) => evidence.card[side].valveLift ?? []);
  return card.length === 0 ? undefined : `the card has the valve lift alone, ${listed(card.map(inches))}`;
}

/** What a lobe lift is got from, named as a thing. */
function firstSaid({ card, rockers }: Evidence): string | undefined {
  if (SIDES.every((side) => card[side].lobeLift === undefined))
    return 'the lobe lift, off the cam card or read at the lifter';
  return rockers.soldAs === undefined && card.assumedRatio === undefined
    ? 'the ratio that is on it now'
    : undefined;
}

/** Lifts that are no readings leave a change with nothing worked out: that is the answer so far, with what comes first. */
export function statedHeadlines(evidence: Evidence): Headline[] {
  const [said, first] = [liftsSaid(evidence), firstSaid(evidence)];
  if (said === undefined || first === undefined) return [];
  const [plan] = plansOf(evidence);
  const what = plan === undefined ? 'What a ratio does' : `What the planned ${nominalSaid(plan)} does`;
  return [
    {
      id: 'headline:change:stated-alone',
      about: { of: 'build' },
      step: 'consequences',
      sentence: `${what} is not worked out yet: ${said}. First: ${first}.`,
    },
  ];
}
