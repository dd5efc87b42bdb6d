import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { stepHeadlines } from '../../call/headline.ts';
import type { Working } from '../../records/workings/workings.ts';
import { noticeComponent } from '../../web/components.ts';
import { pointerSaid } from './pointer-said.ts';
import { chainOf, degreesText, type KeptPeak } from './timing-chain.ts';

const partLink = (context: CallContext, part: string, label: string) => ({
  href: `${context.base}/steps/timing?of=${part}`,
  label,
});

/** What two readings at the stop say of the pointer. */
export function stopFollowUp(context: CallContext, workings: readonly Working[]): Component[] {
  const { stop } = chainOf(workings);
  if (stop === undefined) return [];
  const next = partLink(context, 'centreline', 'Next: the centreline');
  if (!stop.isOut)
    return [
      noticeComponent('Alike on both sides: the pointer stands right. Take the stop out.', { link: next }),
    ];
  return [
    noticeComponent(
      `With the piston held against the stop after TDC, shift the pointer from ${degreesText(stop.trueReading + stop.correction)}° to ${degreesText(stop.trueReading)}°, so that it reads ${degreesText(stop.trueReading)}° on both sides, and keep both readings again. Or leave it: the next forms then ${pointerSaid(stop.correction).todo}. Take the stop out.`,
      { link: next },
    ),
  ];
}

/** What it says, whether top dead centre was proved for it, and the way to the gaps that it moves. */
function saidComponents(context: CallContext, peak: KeptPeak): Component[] {
  const said = stepHeadlines(context, 'timing', peak.side);
  if (!context.assessment.details.timing.offCard.includes(peak.side)) return said;
  return [
    ...said,
    noticeComponent(
      'The gaps to the piston at this timing: every 2° from 20 before to 20 after TDC, both valves.',
      {
        link: { href: `${context.base}/steps/consequences`, label: 'The gaps to the piston' },
      },
    ),
  ];
}

/** Which kept line a figure came from, where the pointer was left. */
function rightedComponents(workings: readonly Working[], peak: KeptPeak): Component[] {
  const { stop } = chainOf(workings.filter(({ seq }) => seq < peak.working.seq));
  if (!peak.righted || stop === undefined) return [];
  return [
    noticeComponent(
      `By line ${stop.working.seq}, the pointer left where it was: ${pointerSaid(stop.correction).done} what was read after TDC.`,
    ),
  ];
}

/** What a kept centreline or pair of events says, which gap it costs, and where it leads. */
export function peakFollowUp(
  context: CallContext,
  part: 'centreline' | 'events',
  workings: readonly Working[],
  last: Working,
): Component[] {
  const chain = chainOf(workings);
  const peak = [...chain.peaks, ...chain.events].find(({ working }) => working.id === last.id);
  if (peak === undefined) return [];
  return [
    ...saidComponents(context, peak),
    ...rightedComponents(workings, peak),
    ...(part === 'centreline'
      ? [
          noticeComponent('Next, where it opens and closes.', {
            link: partLink(context, 'events', 'Opening and closing'),
          }),
        ]
      : []),
  ];
}
