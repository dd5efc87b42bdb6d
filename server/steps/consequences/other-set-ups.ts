import type { Component } from '../../../views/parts/part.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { ratioName } from '../../call/ratio-text.ts';

/** The other set-ups, each a link to what its own ratio does. */
export function otherSetUps(context: CallContext, chosen: SetUpRatio): Component[] {
  const others = context.ratios.filter((found) => found.setUp.id !== chosen.setUp.id);
  if (others.length === 0) return [];
  return [
    {
      template: '/pages/call/actions',
      data: {
        buttons: others.map(({ setUp }) => ({
          label: `Set-up ${setUp.number}: ${valveName(setUp)}, ${ratioName(setUp.method.spring).toLowerCase()}`,
          href: `${context.base}/steps/consequences?set-up=${setUp.id}`,
        })),
      },
    },
  ];
}
