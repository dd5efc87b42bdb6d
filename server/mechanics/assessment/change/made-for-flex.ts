import { PLANNED_RATIO } from '../../kit/allowances.ts';
import { touches } from '../common/gap-said.ts';
import { inches, limitSaid, listed } from '../common/said.ts';
import type { ChangeGap, ChangeRatio } from './detail.ts';
import type { GapCalculations } from './gap-calculations.ts';
import type { Variants } from './spread.ts';
import { touchSaid } from './told.ts';

/**
 * What an arm that is made over its mark, as some are for flex, would bring under a limit that the arm as it is sold
 * does not. An arm that was measured is what it is.
 */
export function madeForFlex(
  after: ChangeRatio | undefined,
  gaps: readonly ChangeGap[],
  { middle }: Variants,
  calculations: GapCalculations,
): string[] {
  if (after === undefined || after.from === 'measured' || middle.after === undefined) return [];
  const { madeForFlex: share, source } = PLANNED_RATIO;
  const over = { ...middle, after: { ...middle.after, value: after.value * (1 + share) } };
  const under = gaps.flatMap((gap) => {
    const { name, title, word, limit } = gap;
    const there = gap.after?.basis === 'calculated' ? calculations.after(over, name) : undefined;
    if (word === 'short' || there?.value === undefined || there.value >= limit.value) return [];
    const said = touches(there)
      ? touchSaid(name, { value: there.value })
      : `${title.toLowerCase()} would be ${inches(there.value)} against ${limitSaid(limit.value)}`;
    return [said];
  });
  if (under.length === 0) return [];
  const percent = Number((share * 100).toPrecision(3));
  return [
    `an arm ${percent} % over, as some are made for flex, would bring it under: ${listed(under)}. Read the first one on a light spring (${source}).`,
  ];
}
