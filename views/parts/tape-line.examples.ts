import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';
import type { VerdictData } from './verdict.examples.ts';

export interface TapeLineData {
  /** Its number on the tape; also its id, `line-12`. */
  readonly line: number | string;
  readonly kind: 'reading' | 'result' | 'question' | 'answer' | 'promise' | 'hold' | 'note' | 'unsent';
  readonly text: string;
  readonly value?: string;
  readonly verdict?: VerdictData['word'];
  readonly who: string;
  /** For machines, ISO 8601. */
  readonly at: string;
  /** For people. */
  readonly when: string;
  /** When it was typed, by the clock of the phone, where that is not when it arrived. */
  readonly typed?: { readonly at: string; readonly when: string };
  /** It came under a stop, and was said to have been read before it. */
  readonly beforeStop?: true;
  readonly restsOn?: readonly number[];
  readonly replaced?: { readonly reason: string; readonly by?: number };
  /** A promise: whose and by when, or that it was kept. */
  readonly due?: string;
  /** Just entered by the other side. */
  readonly fresh?: boolean;
}

const at = (minute: number) => ({ at: `2026-11-25T10:${minute}:00Z`, when: `10:${minute}` });

export const tapeLines: readonly TapeLineData[] = [
  {
    line: 1,
    kind: 'note',
    text: 'Stamp reads “1.75”. Box label is a separate line.',
    who: 'Demo desk',
    ...at(31),
  },
  { line: 2, kind: 'answer', text: 'Apart, nothing hit, bent or loose.', who: 'Builder', ...at(32) },
  {
    line: 3,
    kind: 'reading',
    text: 'Valve lift 5 intake, light spring',
    value: '.466 in',
    who: 'Builder',
    ...at(38),
    replaced: { reason: 'one turn of the dial missed.', by: 6 },
  },
  {
    line: 4,
    kind: 'reading',
    text: 'Lobe lift 5 intake, at the lifter',
    value: '.324 in',
    who: 'Builder',
    ...at(39),
  },
  {
    line: 5,
    kind: 'question',
    text: 'Could one turn of the dial be missing? .100 more would make it 1.747.',
    who: 'Benchcall',
    ...at(40),
    restsOn: [3, 4],
  },
  {
    line: 6,
    kind: 'reading',
    text: 'Valve lift 5 intake, light spring, small hand read first',
    value: '.566 in',
    who: 'Builder',
    ...at(42),
  },
  {
    line: 7,
    kind: 'result',
    text: 'Light ratio 5 intake',
    value: '1.747 ± .006',
    verdict: 'agrees',
    who: 'Benchcall',
    ...at(42),
    restsOn: [4, 6],
  },
  {
    line: 8,
    kind: 'promise',
    text: 'Send the pushrod length chart.',
    due: 'Demo desk, by Friday 27 November',
    who: 'Demo desk',
    ...at(44),
  },
];

const hold: TapeLineData = {
  line: 9,
  kind: 'hold',
  text: 'Do not turn it: resistance felt at 30 after top.',
  who: 'Builder',
  ...at(47),
  fresh: true,
};

export const tapeLine: Part<'/parts/tape-line'> = {
  name: 'tape-line',
  title: 'Line of the tape',
  purpose: 'One entry as it stands on the record; the same markup is sent to the other side.',
  template: '/parts/tape-line',
  examples: [
    { title: 'Just entered by the other side', data: hold },
    {
      title: 'Waits on the builder’s phone',
      data: {
        line: '–',
        kind: 'unsent',
        text: 'Save reading: Reading at full lift: .566',
        who: 'Builder',
        ...at(47),
      },
    },
    {
      title: 'Long text',
      data: { line: 10, kind: 'note', text: LONG, value: '1 284.6 lbf', who: LONG, ...at(48) },
    },
    {
      title: 'Hostile text',
      data: {
        line: 11,
        kind: 'promise',
        text: HOSTILE,
        value: '<b>.324</b>',
        due: HOSTILE,
        who: HOSTILE,
        at: '2026-11-25T10:49:00Z',
        when: '"10:49"',
        replaced: { reason: HOSTILE },
      },
    },
  ],
};
