import type { Slot } from '../../../views/parts/part.ts';
import type { PhotographsData } from '../../../views/parts/photographs.examples.ts';
import { momentText } from '../../calls/pages/moments.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import { type Photograph, SHOWS } from '../photographs.ts';

function isShown(word: string): word is keyof typeof SHOWS {
  return Object.hasOwn(SHOWS, word);
}

export function gallery(sight: Sight, photographs: readonly Photograph[]): Slot {
  if (photographs.length === 0) {
    return {
      template: '/parts/empty',
      data: {
        id: 'no-photographs',
        title: 'No photograph yet',
        text: 'Both sides of the arm, the mark as near as it stays sharp, and the box.',
      },
    };
  }
  const data: PhotographsData = {
    photographs: photographs.map((each) => {
      const shows = isShown(each.shows) ? SHOWS[each.shows] : each.shows;
      return {
        href: `${sight.base}/photographs/${each.id}`,
        width: each.width,
        height: each.height,
        alt: each.caption === '' ? shows : `${shows}: ${each.caption}`,
        shows,
        caption: each.caption,
        who: each.by,
        when: momentText(each.at),
      };
    }),
  };
  return { template: '/parts/photographs', data };
}
