import { valveSaid } from '../../../shared/schemas/words.ts';
import { tellEvents } from '../../call/tell-events.ts';
import type { DataOf } from '../../events/define-events.ts';
import { nominalSaid } from '../../mechanics/assessment/common/said.ts';
import { CONSEQUENCE_EVENTS } from '../../records/consequences/events.ts';

/** `What the ratio does on 1 intake: short: coil bind (with 1.6)` */
export function keptText({
  cylinder,
  valve,
  gaps,
  ratioAfter,
}: DataOf<(typeof CONSEQUENCE_EVENTS)['consequences-kept']>): string {
  const parts = (['short', 'close', 'clear'] as const).flatMap((verdict) => {
    const names = gaps.filter((gap) => gap.verdict === verdict).map((gap) => gap.name.replaceAll('-', ' '));
    return names.length === 0 ? [] : [`${verdict}: ${names.join(', ')}`];
  });
  return `What the ratio does on ${cylinder === undefined ? `${valve} valves` : `${cylinder} ${valveSaid(valve)}`}: ${parts.join('; ') || 'no gap known yet'}${ratioAfter === undefined ? '' : ` (with ${nominalSaid(ratioAfter)})`}`;
}

/** What the kept consequences of a ratio say on the tape. */
export const CONSEQUENCES_TOLD = tellEvents(CONSEQUENCE_EVENTS, {
  'consequences-kept': (kept) => ({ kind: 'result', text: keptText(kept) }),
  'consequences-struck': ({ line, reason }) => ({
    kind: 'note',
    text: `What the ratio does, line ${line}: struck out, ${reason}`,
  }),
});
