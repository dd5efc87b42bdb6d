import type { Component } from '../../../views/parts/part.ts';
import type { PhotographsData } from '../../../views/parts/photographs.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { SHOWS } from '../../records/photographs/new-photograph.ts';
import { momentText } from '../../web/dates.ts';

function isShown(word: string): word is keyof typeof SHOWS {
  return Object.hasOwn(SHOWS, word);
}

export function gallery(context: CallContext): Component {
  const { photographs } = context;
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
        href: `${context.base}/photographs/${each.id}`,
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
