import type { Component } from '../../../views/parts/components.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { ratioName } from '../../call/ratio-text.ts';

/** The set-up the page is about: the one asked for, else the newest light-spring one with a ratio, else any with one. */
export function chosenFor(context: CallContext, asked: string | undefined): SetUpRatio | undefined {
  const { ratios } = context;
  const withRatio = ratios.filter((found) => found.result !== undefined);
  return (
    ratios.find((found) => found.setUp.id === asked) ??
    withRatio.findLast((found) => found.setUp.method.spring === 'light') ??
    withRatio.at(-1) ??
    ratios.at(-1)
  );
}

/** The other set-ups, each a link to what its own ratio does. */
export function otherSetUpsComponents(context: CallContext, chosen: SetUpRatio): Component[] {
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
