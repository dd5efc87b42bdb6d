import type {
  Evidence,
  NoteEvidence,
  PassEvidence,
  SetUpEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../../server/mechanics/kit/si.ts';

/* A valve that is read in one set-up and begun in another. Engines and figures are invented. */

const setUp = (number: number, more: Partial<SetUpEvidence> = {}): SetUpEvidence => ({
  ...{ id: `set-up-${number}`, number, cylinder: 1, valve: 'intake', armId: 'a' },
  ...{ spring: 'light', lifter: 'solid', lash: 'zero', restsOn: 'retainer-flat', alignment: 'parallel' },
  ...{ graduation: 0.001 * IN, perTurn: 0.1 * IN, errorLimit: 0.001 * IN },
  ...{ lobeSource: 'card', lobeErrorLimit: 0.0025 * IN },
  ...more,
});

const passes = (number: number, lifts: readonly number[], more: Partial<PassEvidence> = {}): PassEvidence[] =>
  lifts.map((lift, index) => ({
    ...{ id: `pass-${number}-${more.kind ?? 'valve-lift'}-${index + 1}`, line: 10 * number + index },
    ...{ standing: true, setUpId: `set-up-${number}`, kind: 'valve-lift', pass: index + 1 },
    ...{ value: lift * IN, zeroReturn: 0, counted: true, readAs: 'as read' },
    ...more,
  }));
const lobes = (number: number, lifts: readonly number[]): PassEvidence[] =>
  passes(number, lifts, { kind: 'lobe-lift' }).map((pass) => ({ ...pass, line: pass.line + 5 }));

const engine = {
  engine: { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' },
  card: { intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN }, exhaust: { lobeLift: 0.34 * IN } },
  rockers: { soldAs: 1.6 },
  arms: [{ id: 'a', name: 'A', ratioStamp: '1.6', otherNumber: '', boxLabel: '' }],
  seats: [{ cylinder: 1, valve: 'intake', armId: 'a' }],
  sat: [{ cylinder: 1, valve: 'intake', armId: 'a' }],
  catalogueRatios: [1.5, 1.6, 1.7],
} satisfies Partial<Evidence>;

interface Begun {
  readonly first: Partial<SetUpEvidence>;
  readonly lifts: readonly number[];
  readonly second?: Partial<SetUpEvidence>;
  readonly more?: readonly PassEvidence[];
}

const call = ({ first, lifts, second, more = [] }: Begun): Partial<Evidence> => ({
  ...engine,
  setUps: [setUp(1, first), ...(second === undefined ? [] : [setUp(2, second)])],
  passes: [...passes(1, lifts), ...more],
});

/** What the first set-up lacks, and passes that go with it. */
const LACKING: readonly Omit<Begun, 'second'>[] = [
  { first: { spring: 'running' }, lifts: [0.54, 0.541, 0.54] },
  { first: { spring: 'running', lifter: 'hydraulic' }, lifts: [0.54, 0.533, 0.527] },
  { first: { lifter: 'hydraulic' }, lifts: [0.545] },
  { first: { lifter: 'hydraulic' }, lifts: [0.545, 0.545, 0.545] },
  { first: { lash: 'set', lashSetting: 0.016 * IN }, lifts: [0.544, 0.544, 0.544] },
  { first: { lash: 'set' }, lifts: [0.544, 0.544, 0.544] },
  { first: { lash: 'not-said' }, lifts: [0.544, 0.544, 0.544] },
  { first: { alignment: 'leaning' }, lifts: [0.57, 0.57, 0.57] },
  { first: { alignment: 'not-said', spring: 'not-said', lifter: 'not-said' }, lifts: [0.57, 0.571] },
];
const BEGUN: readonly Partial<SetUpEvidence>[] = [
  {},
  { lifter: 'locked', spring: 'running' },
  { lifter: 'not-said', spring: 'not-said', lash: 'zero', alignment: 'parallel' },
  { lifter: 'not-said', spring: 'not-said', lash: 'not-said', alignment: 'not-said' },
  { lifter: 'hydraulic', lash: 'zero', lobeSource: 'indicator' },
  { tool: 'caliper', lobeSource: 'guess' },
];

const READ_ON: readonly Begun[] = [
  // A lobe that was begun, and one that was read.
  ...[[], [0.352], [0.352, 0.352, 0.352]].map((lift) => ({
    ...{ first: { spring: 'running' as const }, lifts: [0.54, 0.541, 0.54] },
    ...{ second: { lobeSource: 'indicator' as const }, more: lobes(2, lift) },
  })),
  // Two readings that agree, that differ, and of which one was careless.
  ...[0.56, 0.565, 0.58, 0.46].map((lift) => ({
    ...{ first: {}, lifts: [0.56, 0.561, 0.56], second: { alignment: 'parallel' as const } },
    more: passes(2, [lift, lift, lift]),
  })),
  {
    ...{ first: {}, lifts: [0.56, 0.561, 0.56], second: {} },
    more: [...passes(2, [0.58, 0.57, 0.59], { zeroReturn: 0.006 * IN })],
  },
  // Out of travel, off by a turn, and at stations.
  { first: { travel: 0.5 * IN, pushedIn: 0.5 * IN }, lifts: [0.5, 0.5, 0.5] },
  { first: {}, lifts: [0.46, 0.56, 0.56] },
  {
    ...{ first: {}, lifts: [0.54, 0.54, 0.54] },
    more: [0.05, 0.1, 0.2].flatMap((at, index) =>
      passes(1, [1.6 * at], { kind: 'valve-lift-at', atLobeLift: at * IN, pass: index + 1 }).map((pass) => ({
        ...pass,
        ...{ id: `station-${index}`, line: 30 + index },
      })),
    ),
  },
  // Small hand not looked at, zero not looked at, tools that are no dial.
  { first: {}, lifts: [0.56], more: passes(1, [0.561, 0.565], { counted: false, pass: 2 }).slice(1) },
  { first: { tool: 'caliper', errorLimit: 0.004 * IN }, lifts: [0.55, 0.56, 0.57] },
  { first: { restsOn: 'valve-tip', alignment: 'leaning' }, lifts: [0.548, 0.548, 0.548] },
  { first: { lobeSource: 'guess' }, lifts: [0.56, 0.56, 0.56] },
  { first: { lobeSource: 'indicator' }, lifts: [0.56, 0.56, 0.56], more: lobes(1, [0.35, 0.351, 0.35]) },
  { first: { lobeSource: 'indicator' }, lifts: [], more: lobes(1, [0.35, 0.351, 0.35]) },
];

const note = (line: number, kind: NoteEvidence['kind'], done = false): NoteEvidence => ({
  ...{ id: `note-${line}`, line, kind, done },
  body: 'The arm of the first intake comes off, is looked at under good light, and goes back with its hours written down.',
});
const ENDINGS: readonly Partial<Evidence>[] = (['verify-ratio', 'returned-part'] as const).flatMap((goal) =>
  (['note', 'advice', 'promise'] as const).flatMap((kind) =>
    [false, true].map((done) => ({
      ...engine,
      call: { goal, contact: 'none', engineState: 'apart', closed: false } as const,
      notes: [note(1, kind, done)],
    })),
  ),
);

export const OF_SET_UPS: readonly Partial<Evidence>[] = [
  ...LACKING.flatMap((lacking) => BEGUN.map((second) => call({ ...lacking, second }))),
  ...READ_ON.map(call),
  ...ENDINGS,
  {
    ...call({ first: { alignment: 'leaning' }, lifts: [0.57, 0.57, 0.57] }),
    answers: [
      {
        ...{ id: 'lean', line: 40, code: 'plunger-leaning', setUpId: 'set-up-1' },
        ...{ question: 'How far does it lean?', answer: 'found', found: true, lean: 12 * DEG },
      },
    ],
  },
  // Without pushrods there is no lifter that sinks.
  ...(['bucket', 'finger-follower', 'cam-rocker'] as const).map((gear) => ({
    ...call({
      ...{ first: { lifter: 'not-said', spring: 'running' }, lifts: [0.54, 0.541, 0.54] },
      second: { lifter: 'not-said' },
    }),
    engine: { cylinders: 4, gear },
  })),
];
