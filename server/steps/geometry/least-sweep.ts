import { valveSaid } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { gapSaid } from '../../mechanics/assessment/common/gap-said.ts';
import type { LeastSweepDetail, MarksDetail } from '../../mechanics/assessment/marks/detail.ts';
import { noticeComponent } from '../../web/components.ts';
import { inchText } from './mark-drawings.ts';

/** What the width is set against, and in whose words; or what is missing for it, with the way to it. */
function leastComponent(
  { base }: CallContext,
  name: string,
  { value, low, high, from, lacks }: LeastSweepDetail,
  limit: MarksDetail['limit'],
): Component {
  if (value === undefined)
    return noticeComponent(`The least sweep ${name} is not known yet; missing: ${lacks.join(', ')}.`, {
      link: { href: `${base}/steps/geometry?of=roller-sweep`, label: 'Work it out' },
    });
  const least = gapSaid({ value, ...(low && { low }), ...(high && { high }) });
  return noticeComponent(
    `Least sweep ${name}: ${least} (${from.join('; ')}). Looked at again over ${inchText(limit.value)} more (${limit.source}).`,
  );
}

/** The least sweep of each valve that has a mark; before there is any, of each side. */
export function leastComponents(context: CallContext): Component[] {
  const { valves, leastOfSides, limit } = context.assessment.details.marks;
  if (valves.length === 0)
    return leastOfSides.map(({ side, least }) => leastComponent(context, `on the ${side}`, least, limit));
  const told = new Map(
    valves.map(({ cylinder, valve, least }) => {
      const name = least.restsOn.length === 0 ? `on the ${valve}` : `of ${cylinder} ${valveSaid(valve)}`;
      return [JSON.stringify(least), leastComponent(context, name, least, limit)];
    }),
  );
  return [...told.values()];
}
