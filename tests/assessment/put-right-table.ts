import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../server/mechanics/kit/si.ts';
import { PLAIN } from '../mechanics/assessment/plain-build.ts';
import type { Kept } from '../tools/record/kept-workings.ts';

const DEG = Math.PI / 180;

export const BASE: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'adjuster' },
  engine: { ...PLAIN.engine, mounting: 'shaft' },
  rockers: { soldAs: 1.5, pivotToTip: 1.5 * IN },
  card: {
    ...PLAIN.card,
    lashAt: 'hot',
    intake: { lobeLift: 0.34 * IN, lash: 0.016 * IN, centreline: 108 * DEG },
    exhaust: {},
  },
};

const lobe = (more: object): Partial<Evidence> => ({
  card: { ...BASE.card, intake: { ...BASE.card.intake, ...more } },
});
const engine = (more: object): Partial<Evidence> => ({ engine: { ...BASE.engine, ...more } });
const rockers = (more: object): Partial<Evidence> => ({ rockers: { ...BASE.rockers, ...more } });

const SCREW = { thread: '7/16-20', mount: 'cup-screw', ratio: 1.5 };
export const TURNS: Kept = [
  'adjuster',
  { ...SCREW, lifter: 'solid', lashFound: '.022 in', lashWanted: '.016 in' },
];
const PRELOAD: Kept = ['lifter-preload', { ...SCREW, turns: 0.5 }];
export const HEAT: Kept = [
  'lash-hot-cold',
  {
    hotLash: '.016 in',
    temperatureRise: '100 F',
    ratio: 1.5,
    materials: { block: 'cast-iron', head: 'aluminium', pushrod: 'steel', valve: 'steel' },
  },
];
const ROD = { checkerAtZero: '7.8 in', pitch: '.05 in', turns: 0.75 };
const PUSHROD: Kept = ['pushrod-length', { ...ROD, lash: '.016 in', ratio: 1.5 }];
const PUSHROD_LESS: Kept = ['pushrod-length', { ...ROD, less: '.0107 in' }];
// .340 × 1.5 − .016 = .494.
const STAND: Kept = [
  'stand-height',
  { pivotHeight: '1.95 in', tipHeight: '2.3 in', netLift: '.494 in', pivotToTip: '1.5 in' },
];
const ARMS = {
  toValve: { value: '40 mm', errorLimit: '.3 mm' },
  toCam: { value: '25 mm', errorLimit: '.3 mm' },
};
const FOLLOWER: Kept = ['follower-ratio', { shut: ARMS }];
const STOP: Kept = ['top-dead-centre', { stopReadings: ['36 deg', '36 deg'] }];
const PEAK: Kept = ['centreline', { before: '64.5 deg', after: '159.5 deg', card: '108 deg' }];
const EVENTS: Kept = ['centreline', { opens: '9 BTDC', closes: '53 ABDC', cardDuration: '242 deg' }];

export interface PutRight {
  readonly name: string;
  readonly kept: readonly Kept[];
  /** The build as the sum was made for it, and what was put right in it since. */
  readonly before?: Partial<Evidence>;
  readonly since: Partial<Evidence>;
  /** What was told. */
  readonly told: RegExp;
  readonly asks?: string;
}

const HYDRAULIC = engine({ lifter: 'hydraulic-flat' });
const FINGERS = engine({ gear: 'finger-follower' });

/** Found cold at one intake. */
const foundCold = (inches: number): Partial<Evidence> => ({
  lash: [
    {
      id: 'lash-1',
      line: 50,
      standing: true,
      cylinder: 1,
      valve: 'intake',
      gap: { value: inches * IN },
      readAs: 'a gap',
      moment: 'found',
      engine: 'cold',
      nut: 'held',
      day: '2026-03-01',
    },
  ],
});

export const ALL: readonly PutRight[] = [
  // .006 / (1.5 × .05) = .08 of a turn.
  {
    name: 'turns: the card’s lash',
    kept: [TURNS],
    since: lobe({ lash: 0.028 * IN }),
    told: /Tighten \.08 turn/,
  },
  {
    name: 'turns: the card’s lash, a little',
    kept: [TURNS],
    since: lobe({ lash: 0.018 * IN }),
    told: /Tighten \.08 turn/,
  },
  { name: 'turns: the ratio', kept: [TURNS], since: rockers({ soldAs: 1.7 }), told: /Tighten \.08 turn/ },
  {
    name: 'turns: the mounting',
    kept: [TURNS],
    since: engine({ mounting: 'stud' }),
    told: /Tighten \.08 turn/,
  },
  {
    name: 'turns: the lifters',
    kept: [TURNS],
    since: HYDRAULIC,
    told: /Tighten \.08 turn/,
    asks: 'lifters-differ',
  },
  { name: 'turns: the gear', kept: [TURNS], since: engine({ gear: 'bucket' }), told: /Tighten \.08 turn/ },
  // .5 × .05 = .025.
  {
    name: 'preload: the ratio',
    kept: [PRELOAD],
    before: HYDRAULIC,
    since: rockers({ soldAs: 1.7 }),
    told: /press the plunger \.025 in/,
  },
  {
    name: 'preload: the mounting',
    kept: [PRELOAD],
    before: HYDRAULIC,
    since: engine({ lifter: 'hydraulic-flat', mounting: 'stud' }),
    told: /press the plunger \.025 in/,
  },
  {
    name: 'heat: the card’s lash',
    kept: [HEAT],
    since: lobe({ lash: 0.028 * IN }),
    told: /\.016 in hot is about/,
  },
  {
    name: 'heat: what the card’s lash is for',
    kept: [HEAT],
    since: { card: { ...BASE.card, lashAt: 'cold' } },
    told: /\.016 in hot is about/,
  },
  { name: 'heat: the ratio', kept: [HEAT], since: rockers({ soldAs: 1.7 }), told: /\.016 in hot is about/ },
  {
    name: 'heat: the gap that was found cold',
    kept: [[HEAT[0], { ...HEAT[1], coldFound: '.012 in' }]],
    before: foundCold(0.012),
    since: foundCold(0.02),
    told: /Found at \.012 in cold/,
  },
  // 7.800 + .0375 − .016 / 1.5 = 7.8268.
  {
    name: 'pushrod: the card’s lash',
    kept: [PUSHROD],
    since: lobe({ lash: 0.028 * IN }),
    told: /comes to 7\.8268 in/,
  },
  {
    name: 'pushrod: the ratio',
    kept: [PUSHROD],
    since: rockers({ soldAs: 1.7 }),
    told: /comes to 7\.8268 in/,
  },
  { name: 'pushrod: the lifters', kept: [PUSHROD], since: HYDRAULIC, told: /comes to 7\.8268 in/ },
  { name: 'pushrod: the gear', kept: [PUSHROD], since: FINGERS, told: /comes to 7\.8268 in/ },
  {
    name: 'pushrod: the card’s lash, taken off at the pushrod',
    kept: [PUSHROD_LESS],
    since: lobe({ lash: 0.028 * IN }),
    told: /comes to 7\.8268 in/,
  },
  // 2.3 − 1.95 − .494 / 2 = .103.
  { name: 'stand: the lobe', kept: [STAND], since: lobe({ lobeLift: 0.4 * IN }), told: /\.103 in too low/ },
  { name: 'stand: the lash', kept: [STAND], since: lobe({ lash: 0.028 * IN }), told: /\.103 in too low/ },
  { name: 'stand: the ratio', kept: [STAND], since: rockers({ soldAs: 1.6 }), told: /\.103 in too low/ },
  {
    name: 'stand: the arm',
    kept: [STAND],
    since: rockers({ pivotToTip: 1.7 * IN }),
    told: /\.103 in too low/,
  },
  {
    name: 'stand: the mounting',
    kept: [STAND],
    since: engine({ mounting: 'stud' }),
    told: /\.103 in too low/,
  },
  {
    name: 'follower: the gear',
    kept: [FOLLOWER],
    before: FINGERS,
    since: engine({ gear: 'bucket' }),
    told: /follower’s ratio is/,
  },
  {
    name: 'centreline: the card’s',
    kept: [STOP, PEAK],
    since: lobe({ centreline: 112 * DEG }),
    told: /: 4° retarded/,
    asks: 'card-differs',
  },
  // 9 + 180 + 53 = 242, and 121 − 9 = 112.
  {
    name: 'events: the card’s duration',
    kept: [STOP, EVENTS],
    before: lobe({ durations: [{ atLift: 0.05 * IN, duration: 242 * DEG }] }),
    since: lobe({ durations: [{ atLift: 0.05 * IN, duration: 246 * DEG }] }),
    told: /: 4° retarded/,
    asks: 'card-differs',
  },
];
