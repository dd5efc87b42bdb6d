import { defined } from '../../../../shared/defined.ts';
import type { NextAction } from '../assessment.ts';
import { ended } from '../common/first-said.ts';
import { nominalSaid, upperFirst } from '../common/said.ts';
import type { ChangeDetail } from './detail.ts';
import { byPlan, type GapGroup, groupsOf, isFirstPlan, placesSaid } from './groups.ts';
import { nextToMeasure } from './how-measured.ts';
import { notKnownBrief } from './not-known.ts';

/** What a call about a ratio asks for next, for the gaps that it was worked out for. */
export interface NextOfChange {
  /** With what is on it, it comes out short: it is measured, and nothing else goes before that. */
  readonly short: NextAction | undefined;
  /** A gap is known and has no word yet: what it waits for, as its headline says it. */
  readonly held: NextAction | undefined;
  /** Its arm was read so far off that the reading is doubted: the reading that settles that goes first, where there is one. */
  readonly doubted: NextAction | undefined;
  /** It can't be told from its limit: what tells it. */
  readonly close: NextAction | undefined;
  /** Gaps that nothing is known of: said with the answer, which does not stand for them. */
  readonly notKnown: string | undefined;
  /** The worst of these, to be measured once the answer is told. */
  readonly notMeasured: NextAction | undefined;
}

function actionOf(
  group: GapGroup | undefined,
  action: string,
  { stands, asks, reason }: { readonly stands: string; readonly asks: string; readonly reason: string },
): NextAction | undefined {
  const lack = group?.members[0].gap.lacks[0];
  if (group === undefined || lack === undefined) return undefined;
  const [{ gap, detail }] = group.members;
  const of = detail.plan === undefined ? '' : ` with the planned ${nominalSaid(detail.plan)}`;
  return {
    id: `next:consequences:${action}:${group.name}`,
    action: `${action}:${group.name}`,
    // What is measured on the engine has its place on the sheet, valve by valve.
    step: lack.code === 'gap-measured' ? 'sheet' : 'consequences',
    about: { of: 'build' },
    sentence: `${upperFirst(gap.title.toLowerCase())} on ${placesSaid(group.members)}${of} ${stands}. ${asks}: ${ended(lack.said)}`,
    reason,
    ...defined({ settles: lack.settles }),
    turns: lack.turns,
  };
}

const isShortNow = ({ word, members: [{ gap, detail }] }: GapGroup): boolean =>
  word === 'short' && gap.ofSheet !== true && detail.plan === undefined;

/** Of the arms that are on: what comes out short is measured before anything that is only close. */
function shortNow(group: GapGroup | undefined): NextAction | undefined {
  if (group === undefined) return undefined;
  const [{ gap, detail }] = group.members;
  return {
    id: `next:consequences:gap-short:${group.name}`,
    action: `gap-short:${group.name}`,
    step: 'sheet',
    about: detail.about,
    sentence: `${upperFirst(gap.title.toLowerCase())} on ${placesSaid(group.members)} comes out short: measure it, by hand and gently. A qualified shop looks before it runs.`,
    reason: 'It is worked out, and short by that: nobody runs it before it is measured.',
    turns: true,
  };
}

const isDoubted = ({ members: [{ gap }] }: GapGroup): boolean => gap.lacks[0]?.code === 'ratio-doubted';

/** Of the first plan of each side; the others wait for the same gaps. */
export function nextOfChange(details: readonly ChangeDetail[]): NextOfChange {
  const groups = byPlan(details.filter(isFirstPlan)).flatMap((plan) => groupsOf(plan.details));
  const first = (fits: (group: GapGroup) => boolean) =>
    groups.find((group) => fits(group) && group.members[0].gap.lacks.length > 0);
  const waits = (fits: (group: GapGroup) => boolean) =>
    actionOf(
      first((group) => group.word === undefined && fits(group)),
      'gap-waits',
      { stands: 'has no word yet', asks: 'First', reason: 'The gap has no word before that.' },
    );
  return {
    notKnown: notKnownBrief(details),
    notMeasured: nextToMeasure(details),
    short: shortNow(groups.find(isShortNow)),
    held: waits((group) => !isDoubted(group)),
    doubted: waits(isDoubted),
    close: actionOf(
      first(({ word }) => word === 'close'),
      'gap-close',
      {
        stands: 'is close',
        asks: 'What tells it from its limit',
        reason: 'The calculation can’t tell it.',
      },
    ),
  };
}
