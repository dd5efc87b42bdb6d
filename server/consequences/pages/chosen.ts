import type { Slot } from '../../../views/parts/part.ts';
import { type Sight, valveName } from '../../calls/pages/sight.ts';
import { ratioName } from '../../readings/pages/ratio-words.ts';
import type { SetUpRatio } from '../../readings/ratio.ts';

/** The set-up the page is about: the one asked for, else the newest light-spring one with a ratio, else any with one. */
export function chosenFor(sight: Sight, asked: string | undefined): SetUpRatio | undefined {
  const { ratios } = sight;
  const withRatio = ratios.filter((found) => found.result !== undefined);
  return (
    ratios.find((found) => found.setUp.id === asked) ??
    withRatio.findLast((found) => found.setUp.method.spring === 'light') ??
    withRatio.at(-1) ??
    ratios.at(-1)
  );
}

/** The other set-ups, each a link to what its own ratio does. */
export function otherSetUps(sight: Sight, chosen: SetUpRatio): Slot[] {
  const others = sight.ratios.filter((found) => found.setUp.id !== chosen.setUp.id);
  if (others.length === 0) return [];
  return [
    {
      template: '/pages/call/actions',
      data: {
        buttons: others.map(({ setUp }) => ({
          label: `Set-up ${setUp.number}: ${valveName(setUp)}, ${ratioName(setUp.method.spring).toLowerCase()}`,
          href: `${sight.base}/steps/consequences?set-up=${setUp.id}`,
        })),
      },
    },
  ];
}
