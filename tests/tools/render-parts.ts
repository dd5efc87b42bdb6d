import { createViews } from '../../views/engine.ts';
import { parts } from '../../views/parts/registry.ts';
import { readStyles } from '../../views/styles/read.ts';

/** The template engine as the service runs it. */
export const eta = createViews();

/** A page in its layout with the style sheets inside, so that it can be opened as a single file. */
export async function standalonePage(title: string, body: string, side = 'desk'): Promise<string> {
  const nav = [
    { href: '#calls', label: 'Calls', current: true },
    { href: '#parts', label: 'Returned parts' },
    { href: '#lots', label: 'Lots' },
  ];
  const shown = side === 'builder' ? {} : { nav, signedIn: { name: 'Demo desk', accountHref: '#out' } };
  const page = eta.render('/layout', { body, frame: { title, side, skip: 'Skip to the part', ...shown } });
  return page.replace('</head>', `<style>${await readStyles()}</style></head>`);
}

/** The page that shows every part in every state. */
export function partsBody(): string {
  return eta.render('/pages/reference-parts/page', { parts });
}
