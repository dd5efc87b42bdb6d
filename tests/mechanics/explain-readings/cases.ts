import type { ExplainInput, ExplainReading } from '../../../server/mechanics/explain-readings/types.ts';

export const LIST = [1.5, 1.55, 1.6, 1.65, 1.7, 1.75, 1.8] as const;

/** A valve lift, light spring and solid lifter unless said; inches. */
export function valve(value: number, said: Partial<ExplainReading> = {}): ExplainReading {
  return { of: 'valve-lift', value, pass: 1, spring: 'light', lifter: 'solid', setUp: 0, ...said };
}

/** A lobe lift at the lifter, inches. */
export function lobe(value: number, said: Partial<ExplainReading> = {}): ExplainReading {
  return { of: 'lobe-lift', value, pass: 1, spring: 'light', lifter: 'solid', setUp: 0, ...said };
}

const ALL = { lashSet: true, aligned: true, counted: true } as const;
const ENGINE = { spring: 'running', lifter: 'hydraulic' } as const;

/** One row of the worked cases, with the printed answers. */
export interface WorkedCase {
  readonly row: string;
  readonly input: ExplainInput;
  readonly interval: readonly [number, number];
  readonly median: number;
  /** Printed chances of names, e.g. `1.6`, and of explanations, e.g. `1.6 turn-too-few`. */
  readonly chances: Readonly<Record<string, number>>;
  readonly noMistake?: number;
  readonly againstMark?: string;
  readonly next?: { readonly action: string; readonly bits: number };
  readonly settled: boolean;
}

export const WORKED_CASES: readonly WorkedCase[] = [
  {
    row: 'mark 1.6, card .348/.339, V .557',
    input: {
      nominals: LIST,
      mark: 1.6,
      cardLobeLift: 0.348,
      otherLobeLift: 0.339,
      lash: 'zero',
      readings: [valve(0.557)],
    },
    interval: [1.582, 1.624],
    median: 1.602,
    chances: { '1.6': 0.991 },
    noMistake: 0.886,
    settled: true,
  },
  {
    row: 'card .362/.300, V .480',
    input: { nominals: LIST, cardLobeLift: 0.362, otherLobeLift: 0.3, lash: 'zero', readings: [valve(0.48)] },
    interval: [1.33, 1.673],
    median: 1.602,
    chances: { '1.6 turn-too-few': 0.222, '1.6 wrong-card-row': 0.174, '1.6 wrong-valve': 0.174 },
    next: { action: 'valve-lift-at-.200', bits: 0.862 },
    settled: false,
  },
  {
    row: '1.65, .330, lash unsaid, hydraulic running .528 .523 .517',
    input: {
      nominals: LIST,
      mark: 1.65,
      cardLobeLift: 0.33,
      readings: [
        valve(0.528, ENGINE),
        valve(0.523, { ...ENGINE, pass: 2 }),
        valve(0.517, { ...ENGINE, pass: 3 }),
      ],
    },
    interval: [1.614, 1.719],
    median: 1.658,
    chances: { '1.65': 0.945 },
    next: { action: 'light-spring-solid-lifter', bits: 0.815 },
    settled: false,
  },
  {
    row: '1.6, .352, three lobes and three valve lifts with all flags, zero-return not found',
    input: {
      nominals: LIST,
      mark: 1.6,
      cardLobeLift: 0.352,
      lash: 'zero',
      readings: [
        lobe(0.352),
        lobe(0.3515, { pass: 2 }),
        lobe(0.352, { pass: 3 }),
        valve(0.5825, ALL),
        valve(0.583, { ...ALL, pass: 2 }),
        valve(0.5825, { ...ALL, pass: 3 }),
      ],
      answers: [{ ask: 'zero-return', found: false }],
    },
    interval: [1.602, 1.666],
    median: 1.655,
    chances: { '1.6': 0.686, '1.65': 0.244 },
    againstMark: 'differs',
    next: { action: 'valve-lift-at-.200', bits: 0.226 },
    settled: false,
  },
  {
    row: '1.5, .310, V .435',
    input: { nominals: LIST, mark: 1.5, cardLobeLift: 0.31, lash: 'zero', readings: [valve(0.435)] },
    interval: [1.439, 1.541],
    median: 1.496,
    chances: { '1.5 hand-read-backwards': 0.388, '1.5 lash-left-in': 0.219 },
    next: { action: 'valve-lift-at-.200', bits: 1.121 },
    settled: false,
  },
  {
    row: '.355, V 14.43',
    input: { nominals: LIST, cardLobeLift: 0.355, lash: 'zero', readings: [valve(14.43)] },
    interval: [1.586, 1.618],
    median: 1.602,
    chances: { '1.6 unit-or-decimal': 0.781 },
    settled: false,
  },
  {
    row: '1.6, .400, lash unsaid, V .639, lashSet .655',
    input: {
      nominals: LIST,
      mark: 1.6,
      cardLobeLift: 0.4,
      readings: [valve(0.639), valve(0.655, { lashSet: true, pass: 2 })],
    },
    interval: [1.59, 1.65],
    median: 1.633,
    chances: { '1.6 lash-left-in': 0.749, '1.6 lash-left-in+plunger-tilted': 0.079 },
    next: { action: 'align-plunger', bits: 0.363 },
    settled: false,
  },
];
