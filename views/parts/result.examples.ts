import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';
import type { RatioWord, VerdictData } from './verdict.examples.ts';

/** An interval on a ruled line with the values it is compared to. */
export interface ScaleData {
  readonly id: string;
  readonly title: string;
  readonly desc: string;
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly value: number;
  /** In rising order. */
  readonly marks: readonly { readonly at: number; readonly label: string }[];
  readonly verdict?: RatioWord;
}

export interface ResultData {
  readonly id: string;
  readonly label: string;
  /** Left out when there is no answer yet; then `none` says why. */
  readonly value?: string;
  readonly none?: string;
  readonly spread?: string;
  readonly unit?: string;
  readonly scale?: ScaleData;
  readonly verdict?: VerdictData;
  readonly basis?: string;
  /** Lines of the tape. */
  readonly restsOn?: readonly number[];
  readonly live?: boolean;
}

const nominals = [
  { at: 1.65, label: '1.65' },
  { at: 1.7, label: '1.70' },
  { at: 1.75, label: '1.75' },
  { at: 1.8, label: '1.80' },
];

const scale = (id: string, value: number, half: number, word: RatioWord): ScaleData => ({
  id,
  title: `Light ratio ${value.toFixed(3)} against the nominal ratios`,
  desc: `The interval runs from ${(value - half).toFixed(3)} to ${(value + half).toFixed(3)}; nominal ratios are ruled at 1.65, 1.70, 1.75 and 1.80.`,
  from: 1.62,
  to: 1.82,
  value,
  low: value - half,
  high: value + half,
  marks: nominals,
  verdict: word,
});

export const result: Part<ResultData> = {
  name: 'result',
  title: 'Result',
  purpose: 'The number, how far it can be trusted, what it says, and which lines of the tape it rests on.',
  template: '/parts/result',
  examples: [
    {
      title: 'A ratio that agrees',
      data: {
        id: 'result-agrees',
        label: 'Light ratio, cylinder 5 intake',
        value: '1.747',
        spread: '.006',
        scale: scale('result-agrees-scale', 1.747, 0.006, 'agrees'),
        verdict: { word: 'agrees', text: 'with 1.75 and with no other nominal.' },
        basis: '95 % interval from three passes.',
        restsOn: [4, 6],
      },
    },
    {
      title: 'A ratio that cannot be told',
      data: {
        id: 'result-wide',
        label: 'Light ratio, cylinder 5 intake',
        value: '1.68',
        spread: '.03',
        scale: scale('result-wide-scale', 1.68, 0.03, 'cannot-tell'),
        verdict: {
          word: 'cannot-tell',
          text: 'between 1.65 and 1.70. A second pass at the lifter says most.',
        },
        basis: '95 % interval from one pass.',
        restsOn: [4],
      },
    },
    {
      title: 'A ratio that differs',
      data: {
        id: 'result-differs',
        label: 'Light ratio, cylinder 5 intake',
        value: '1.722',
        spread: '.007',
        scale: scale('result-differs-scale', 1.722, 0.007, 'differs'),
        verdict: { word: 'differs', text: 'from 1.75 as stamped.' },
        basis: '95 % interval from three passes.',
        restsOn: [4, 6],
      },
    },
    {
      title: 'A length',
      data: {
        id: 'result-lift',
        label: 'Net lift, intake',
        value: '.5484',
        spread: '.0021',
        unit: 'in',
        basis: 'Calculated from the light ratio and a lash of .018 in.',
      },
    },
    {
      title: 'A reading between two gauges',
      data: {
        id: 'result-between',
        label: 'Rocker slot to stud',
        value: '.024 to .028',
        unit: 'in',
        basis: 'Go on .024, no go on .028.',
      },
    },
    {
      title: 'Nothing to show yet',
      data: {
        id: 'result-none',
        label: 'Light ratio, cylinder 5 intake',
        none: 'Not yet: the lobe lift is missing.',
        live: true,
      },
    },
    {
      title: 'Long text',
      data: { id: 'result-long', label: LONG, value: '1 284.6', spread: '14.2', unit: 'lbf', basis: LONG },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'result-hostile',
        label: HOSTILE,
        value: HOSTILE.slice(0, 20),
        spread: '<i>',
        unit: '"in"',
        basis: HOSTILE,
        scale: {
          ...scale('result-hostile-scale', 1.7, 0.01, 'agrees'),
          title: HOSTILE,
          desc: HOSTILE,
          marks: [{ at: 1.7, label: '<b>' }],
        },
      },
    },
  ],
};
