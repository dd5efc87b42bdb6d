import type { Registered } from '../compute/registry.ts';
import type { Page } from '../web/pages/render.ts';
import { onShelves } from './groups.ts';
import { find } from './search.ts';

/** The list of all computations, or of those that a builder's words find. */
export function listPage(computations: Iterable<Registered>, asked: string): Page {
  const question = asked.trim();
  const all = [...computations];
  const found = question === '' ? all : find(question, all);
  const shown = (items: readonly Registered[]) =>
    items.map(({ name, title, summary }) => ({ href: `/reference/${name}`, title, summary }));
  return {
    template: 'reference',
    title: question === '' ? 'Reference' : `${question.slice(0, 60)}: reference`,
    place: '/reference',
    data: {
      asked,
      searched: question !== '',
      count: found.length,
      shelves:
        question === ''
          ? onShelves(all).map(({ title, items }) => ({ title, items: shown(items) }))
          : [{ title: 'Found, best first', items: shown(found) }],
    },
  };
}
