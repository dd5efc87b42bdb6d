import { verdictOfGap } from '../../consequences/gap-row.ts';
import type { AssessedQuestion, NotToRun } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';
import { groupsOf, isFirstPlan, ofWorst, placesSaid, sharedBy } from './groups.ts';
import { hangsOn } from './hangs-on.ts';
import { gapToldAtWorst } from './told.ts';

/** As it comes out with the arms before, where that is short; what was read with those is told by the sheet. */
function asBefore(gap: ChangeGap): ChangeGap[] {
  const { before, limit } = gap;
  if (before?.basis !== 'calculated' || verdictOfGap(before, limit.value) !== 'short') return [];
  return [{ ...gap, after: before, word: 'short', lacks: [] }];
}

/**
 * Gaps that are short by the same figures with the arms that the engine has: who leaves the planned ones off must not go
 * back to those either. `ofSprings`: while the heights are in doubt nothing that is calculated from them has a word.
 */
export function shortBefore(
  details: readonly ChangeDetail[],
  ofSprings: readonly AssessedQuestion[],
  questions: Parameters<typeof hangsOn>[1],
): NotToRun[] {
  const isHeld = ({ name }: ChangeGap): boolean => name === 'coil-bind' && ofSprings.some(inDoubt);
  const here = details
    .filter((detail) => detail.plan !== undefined && isFirstPlan(detail))
    .map((detail) => ({
      ...detail,
      gaps: detail.gaps.filter((gap) => !isHeld(gap)).flatMap(asBefore),
    }));
  return groupsOf(here).map((group): NotToRun => {
    const { members, touching, name, key } = group;
    const [{ gap }, ...others] = members;
    const open = hangsOn(group, questions);
    const ratioOf = ({ detail }: (typeof members)[number]) => detail.before?.said;
    const shared = sharedBy(members, ratioOf);
    const said = shared === undefined ? '' : `, ${shared}`;
    return {
      id: `not-to-run:gap-short-before:${name}${key}${touching ? ':touching' : ''}`,
      about: { of: 'build' },
      what: 'run',
      ...(open.length === 0 ? {} : { hangsOn: open }),
      sentence: `Do not run it with the arms before the change${said}: ${gap.title.toLowerCase()} on ${placesSaid(members)} comes out short, ${gapToldAtWorst(gap, others.length > 0)}${ofWorst(members, ratioOf)}.`,
      wayOut: 'Measure the gap, and have a qualified shop look before it runs.',
    };
  });
}
