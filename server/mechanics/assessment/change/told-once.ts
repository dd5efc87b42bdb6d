import { adjustersWord } from '../../consequences/adjusters.ts';
import { cautionsOf } from '../../consequences/cautions.ts';
import type { ConsequenceInput } from '../../consequences/types.ts';
import type { AssessedQuantity, AssessedQuestion } from '../assessment.ts';
import type { GapReading } from '../sheet/gap-found-off.ts';
import type { ChangeDetail } from './detail.ts';

/** One valve or side worked out, before what is told once for all of them. */
export interface Worked {
  readonly detail: Omit<ChangeDetail, 'cautions' | 'adjusters'>;
  readonly input: ConsequenceInput;
  readonly otherArms: boolean;
  readonly questions: readonly AssessedQuestion[];
  /** Gaps that were read with arms of which no entry says the ratio. */
  readonly asksRatio: readonly GapReading[];
  readonly quantities: readonly AssessedQuantity[];
}

/** What is set again and what a turn of it does, told once for the valves of a plan. */
const adjustersOf = (worked: readonly Worked[], plan: number | undefined): string => {
  const here = worked.filter(({ detail }) => detail.plan === plan);
  return adjustersWord(
    here.map(({ input }) => input),
    here.some(({ otherArms }) => otherArms),
  );
};

/** The adjusters and cautions of each valve; what is told of the studs is the same for all of them. */
export function toldOnce(worked: readonly Worked[], studs: readonly string[]): ChangeDetail[] {
  const details = worked.map(({ detail }) => detail);
  return details.map((detail) => ({
    ...detail,
    adjusters: adjustersOf(worked, detail.plan),
    cautions: cautionsOf(
      studs,
      detail.gaps.some(({ word }) => word === 'short'),
    ),
  }));
}
