import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';
import type { GapWord } from './verdict.examples.ts';

export interface GapBarData {
  readonly id: string;
  readonly label: string;
  /** The gap as it is read out, `.041 ± .006` or `.024 to .028`. */
  readonly text: string;
  readonly unit: string;
  readonly basis: 'measured' | 'calculated';
  readonly verdict: GapWord;
  /** Left out for a reading between two gauges: then there is no best value to draw. */
  readonly point?: { readonly at: number; readonly text: string };
  /** Left out when no gauge has found this end. */
  readonly low?: number;
  readonly high?: number;
  readonly limit: { readonly at: number; readonly text: string; readonly source: string };
}

const common = 'common practice, no published source';

export const gapBar: Part<'/parts/gap-bar'> = {
  name: 'gap-bar',
  title: 'Gap bar',
  purpose: 'A gap against its limit with the uncertainty drawn; what lies under the limit is hatched.',
  template: '/parts/gap-bar',
  examples: [
    {
      title: 'clear',
      data: {
        id: 'gap-clear',
        label: 'Coil bind, intake',
        text: '.078 ± .005',
        unit: 'in',
        basis: 'measured',
        verdict: 'clear',
        point: { at: 0.078, text: '.078' },
        low: 0.073,
        high: 0.083,
        limit: { at: 0.06, text: '.060', source: common },
      },
    },
    {
      title: 'close',
      data: {
        id: 'gap-close',
        label: 'Retainer to seal, intake',
        text: '.052 ± .010',
        unit: 'in',
        basis: 'calculated',
        verdict: 'close',
        point: { at: 0.052, text: '.052' },
        low: 0.042,
        high: 0.062,
        limit: { at: 0.05, text: '.050', source: common },
      },
    },
    {
      title: 'short, below nothing',
      data: {
        id: 'gap-short',
        label: 'Piston to valve, exhaust',
        text: '−.012 ± .008',
        unit: 'in',
        basis: 'calculated',
        verdict: 'short',
        point: { at: -0.012, text: '−.012' },
        low: -0.02,
        high: -0.004,
        limit: { at: 0.1, text: '.100', source: common },
      },
    },
    {
      title: 'Between two gauges',
      data: {
        id: 'gap-between',
        label: 'Rocker slot to stud',
        text: '.024 to .028',
        unit: 'in',
        basis: 'measured',
        verdict: 'short',
        low: 0.024,
        high: 0.028,
        limit: { at: 0.03, text: '.030', source: common },
      },
    },
    {
      title: 'Open at one end',
      data: {
        id: 'gap-open',
        label: 'Rocker to retainer',
        text: 'more than .040',
        unit: 'in',
        basis: 'measured',
        verdict: 'clear',
        low: 0.04,
        limit: { at: 0.03, text: '.030', source: common },
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        id: 'gap-hostile',
        label: `${LONG} ${HOSTILE}`,
        text: HOSTILE,
        unit: '<b>in</b>',
        basis: 'calculated',
        verdict: 'close',
        point: { at: 1, text: '<b>1</b>' },
        low: 0.9,
        high: 1.1,
        limit: { at: 1, text: '<i>', source: HOSTILE },
      },
    },
  ],
};
