import type { Pages } from './pages.ts';

/** Where the skip link of each kind of page goes, in its words. */
export const SKIPS: Readonly<Record<keyof Pages, string>> = {
  call: 'Skip to this step of the call',
  calls: 'Skip to the list of calls',
  error: 'Skip to what went wrong',
  home: 'Skip to what this is',
  plain: 'Skip to the entries',
  problem: 'Skip to this problem',
  reference: 'Skip to the computations',
  'reference-api': 'Skip to the routes',
  'reference-computation': 'Skip to the computation',
  'reference-parts': 'Skip to the parts',
  report: 'Skip to the report',
  takeover: 'Skip to the card',
  worksheet: 'Skip to the worksheet',
};
