import { defined } from '../../../../shared/defined.ts';
import { mayBearTooMuch } from '../../consequences/cautions.ts';
import type { ConsequenceInput } from '../../consequences/types.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeDetail } from './detail.ts';
import { openLoadWith } from './figures.ts';
import { planKey } from './plans.ts';
import { onToday } from './ratios.ts';
import type { Spot } from './spots.ts';

interface Planned {
  readonly seen: Evidence;
  readonly spot: Spot;
  readonly plan: number | undefined;
}

/** With what is on now, told beside the first plan: a stud that bears too much does so before anything is fitted. */
export function todayOf(
  { seen: evidence, spot, plan }: Planned,
  known: Omit<ConsequenceInput, 'before' | 'after'>,
): ChangeDetail['today'] {
  const { mounting, studSize } = evidence.engine;
  if (plan === undefined || planKey(evidence, plan) !== '') return undefined;
  if (!mayBearTooMuch(defined({ mounting, size: studSize }))) return undefined;
  const ratio = onToday(evidence, spot.side, spot.ratios, spot.place);
  const load = ratio && openLoadWith(known, ratio, spot.about);
  return load && { load, said: ratio.said };
}
