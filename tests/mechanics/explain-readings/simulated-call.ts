import type {
  Cause,
  ExplainInput,
  ExplainReading,
} from '../../../server/mechanics/explain-readings/types.ts';
import type { Chance } from './random.ts';

export const NAMES = [1.5, 1.55, 1.6, 1.65, 1.7, 1.75, 1.8] as const;

/** What is really the case on the engine, and which mistakes are made. Lengths in inches. */
export interface TrueCall {
  readonly name: number;
  readonly listed: boolean;
  readonly ratio: number;
  /** Lobe lift under the pushrod that is measured at the lifter, and under the valve that is measured. */
  readonly ownLobe: number;
  readonly valveLobe: number;
  readonly flex: number;
  readonly sink: number;
  readonly sinkPerPass: number;
  readonly ratioSlope: number;
  readonly spread: number;
  readonly valveDial: number;
  readonly lobeDial: number;
  readonly lash: number;
  /** What a leaning plunger makes of the lift. */
  readonly tilt: number;
  readonly zero: number;
  readonly fault: number;
  readonly turns: -1 | 0 | 1;
  readonly backwards: boolean;
  readonly slipsFirst: boolean;
  readonly cardSlipped: boolean;
  readonly mistakes: ReadonlySet<Cause>;
  /** What the builder says, all but the readings. */
  readonly said: Omit<ExplainInput, 'readings'>;
  readonly spring: 'light' | 'running';
  readonly lifter: 'solid' | 'hydraulic';
  /** The lobe under the valve that the arm is moved to; while it is not known, each reading there draws its own. */
  readonly lobeElsewhere?: number;
}

const RARE: readonly (readonly [Cause, number])[] = [
  ['turn-too-many', 0.02],
  ['turn-too-few', 0.03],
  ['hand-read-backwards', 0.02],
  ['plunger-tilted', 0.07],
  ['zero-moved', 0.04],
  ['wrong-card-row', 0.02],
  ['wrong-valve', 0.02],
  ['valve-lift-as-lobe', 0.02],
  ['card-not-this-lobe', 0.03],
  ['unlisted-fault', 0.03],
  ['passes-scatter', 0.01],
  ['ratio-not-listed', 0.02],
];

const LASH_LEFT_IN = 0.12;
const LASH_LEFT_IN_SAID_ZERO = 0.04;
const SLIP = 0.02;

function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function cosineFactor(chance: Chance, from: number, to: number): number {
  const cosine = Math.cos((chance.between(from, to) * Math.PI) / 180);
  return chance.happens(4 / 7) ? 1 / cosine : cosine;
}

/** One slip of the pen: tenths or hundredths digit another, or two neighbours of three exchanged. */
export function slipped(chance: Chance, value: number): number {
  const digits = [1, 2, 3].map((place) => Math.floor(value * 10 ** place + 1e-6) % 10);
  const [tenths = 0, hundredths = 0, last = 0] = digits;
  const way = Math.floor(chance.between(0, 20));
  if (way < 9) return value + (((tenths + 1 + way) % 10) - tenths) / 10;
  if (way < 18) return value + (((hundredths + 1 + way - 9) % 10) - hundredths) / 100;
  return way === 18 ? value + (hundredths - tenths) * 0.09 : value + (last - hundredths) * 0.009;
}

function mistakesMade(
  chance: Chance,
  saidZero: boolean,
  hydraulic: boolean,
  lobesDiffer: boolean,
): Set<Cause> {
  const made = new Set<Cause>();
  for (const [cause, probability] of RARE) if (chance.happens(probability)) made.add(cause);
  if (chance.happens(saidZero || hydraulic ? LASH_LEFT_IN_SAID_ZERO : LASH_LEFT_IN)) made.add('lash-left-in');
  if (!lobesDiffer) {
    made.delete('wrong-card-row');
    made.delete('wrong-valve');
  }
  return made;
}

function trueRatio(chance: Chance, name: number, listed: boolean): number {
  if (!listed) return chance.between(1.2, 2.05);
  const share = chance.happens(0.15) ? chance.sign() * chance.between(0.01, 0.04) : chance.normal(0.007);
  return name * (1 + share);
}

/** The lobe lifts on the card and on the engine, and what is entered for the card. */
function lobes(chance: Chance, name: number, made: ReadonlySet<Cause>, card: number, other: number) {
  const near = (lift: number) => lift + chance.between(-0.0025, 0.0025);
  let ownLobe = near(card);
  if (made.has('wrong-card-row')) ownLobe = near(other);
  if (made.has('card-not-this-lobe')) ownLobe = card + chance.sign() * chance.between(0.004, 0.03);
  const valveLobe = made.has('wrong-valve') ? near(other) : ownLobe;
  const factor = chance.happens(0.7) ? name : chance.pick(NAMES);
  const meant = made.has('valve-lift-as-lobe') ? thousandths(card * factor) : card;
  const cardSlipped = chance.happens(SLIP);
  return { ownLobe, valveLobe, cardSlipped, entered: cardSlipped ? slipped(chance, meant) : meant };
}

function faultOf(chance: Chance): number {
  return chance.happens(1 / 3) ? -chance.between(0.01, 0.15) : chance.sign() * chance.between(0.01, 0.09);
}

/**
 * Draws one call as the design note simulates it ("Simulated call"). Units and decimals are not among
 * the mistakes it draws.
 */
export function drawCall(chance: Chance): TrueCall {
  const name = chance.pick(NAMES);
  const card = thousandths(chance.between(0.26, 0.42));
  const other = chance.happens(0.3) ? card : thousandths(card + chance.sign() * chance.between(0.004, 0.03));
  const spring = chance.happens(0.6) ? 'running' : 'light';
  const lifter = chance.happens(0.4) ? 'hydraulic' : 'solid';
  const saidZero = chance.happens(0.6);
  const made = mistakesMade(chance, saidZero, lifter === 'hydraulic', Math.abs(card - other) > 0.003);
  const listed = !made.has('ratio-not-listed');
  const lobe = lobes(chance, name, made, card, other);
  const sinks = lifter === 'hydraulic' && chance.happens(0.7);
  const [flexFrom, flexTo] = chance.pick([
    [0.005, 0.015],
    [0.015, 0.04],
    [0.005, 0.02],
  ] as const);
  const marked = chance.happens(0.5);
  const mark = chance.happens(0.9) ? name : chance.pick(NAMES.filter((one) => one !== name));
  return {
    name,
    listed,
    ratio: trueRatio(chance, name, listed),
    ownLobe: lobe.ownLobe,
    valveLobe: lobe.valveLobe,
    flex: chance.between(flexFrom, flexTo),
    sink: sinks ? chance.between(0.004, 0.04) : 0,
    sinkPerPass: sinks ? chance.between(0.001, 0.009) : 0,
    ratioSlope: chance.between(-0.08, 0.08),
    spread: made.has('passes-scatter') ? 0.012 : 0.0012,
    valveDial: chance.between(-0.0015, 0.0015),
    lobeDial: chance.between(-0.0015, 0.0015),
    lash: made.has('lash-left-in') ? chance.between(0.006, 0.028) : Math.abs(chance.normal(0.001)),
    tilt: made.has('plunger-tilted') ? cosineFactor(chance, 4, 15) : cosineFactor(chance, 0, 3),
    zero: made.has('zero-moved') ? chance.sign() * chance.between(0.003, 0.025) : 0,
    fault: made.has('unlisted-fault') ? faultOf(chance) : 0,
    turns: made.has('turn-too-many') ? 1 : made.has('turn-too-few') ? -1 : 0,
    backwards: made.has('hand-read-backwards'),
    slipsFirst: chance.happens(SLIP),
    cardSlipped: lobe.cardSlipped,
    mistakes: made,
    said: {
      nominals: NAMES,
      cardLobeLift: lobe.entered,
      otherLobeLift: other,
      ...(marked ? { mark } : {}),
      ...(saidZero ? { lash: 'zero' as const } : {}),
    },
    spring,
    lifter,
  };
}

export type Asked = Omit<ExplainReading, 'value' | 'setUp' | 'pass'> & {
  readonly setUp?: number;
  readonly pass?: number;
};

function lobeReading(chance: Chance, call: TrueCall): number {
  return call.ownLobe + call.lobeDial + chance.normal(call.spread);
}

/** Lobes of one cam are alike to the card’s ± .0025. */
export const lobeNear = (chance: Chance, lobe: number): number => lobe + chance.between(-0.0025, 0.0025);

function valveReading(chance: Chance, call: TrueCall, ask: Asked, pass: number, setUp: number): number {
  const running = ask.spring !== 'light';
  const atStation = ask.atLobeLift !== undefined;
  const lobe = ask.otherValve ? (call.lobeElsewhere ?? lobeNear(chance, call.valveLobe)) : call.valveLobe;
  const lift =
    ask.atLobeLift === undefined ? lobe : ask.atLobeLift + call.lobeDial + chance.normal(call.spread);
  const ratio = call.ratio + (atStation ? call.ratioSlope * (lift - lobe) : 0);
  const flexShare = (running ? 1 : 0.03) * (atStation ? 0.35 + 0.65 * Math.min(1, lift / lobe) : 1);
  const sinkShare = ask.lifter === 'solid' ? 0 : running ? 1 : 0.3;
  const sink = call.sink + (pass - 1) * call.sinkPerPass;
  const lash = ask.lashSet || ask.otherValve ? Math.abs(chance.normal(0.001)) : call.lash;
  const tilt = ask.aligned ? cosineFactor(chance, 0, 2) : call.tilt;
  const moved = setUp === 0 ? call.zero + (atStation ? 0 : call.fault) : 0;
  const lifted = ratio * lift - lash - flexShare * call.flex - sinkShare * sink;
  return tilt * lifted + call.valveDial + moved + chance.normal(call.spread);
}

function asEntered(call: TrueCall, ask: Asked, lift: number): number {
  let shown = thousandths(lift);
  if (!ask.counted) {
    if (call.backwards) shown = 0.2 * Math.floor(shown / 0.1 + 1e-9) + 0.1 - shown;
    shown += call.turns * 0.1;
  }
  return thousandths(shown);
}

/** Takes one reading of the call. `before`: the readings taken so far. */
export function takeReading(
  chance: Chance,
  call: TrueCall,
  ask: Asked,
  before: readonly ExplainReading[],
): ExplainReading {
  const pass = ask.pass ?? before.filter((reading) => reading.of === ask.of).length + 1;
  const setUp = ask.setUp ?? before[before.length - 1]?.setUp ?? 0;
  if (ask.of === 'lobe-lift') return { ...ask, value: thousandths(lobeReading(chance, call)), pass, setUp };
  const isFirst = !before.some((reading) => reading.of === 'valve-lift');
  let value = asEntered(call, ask, valveReading(chance, call, ask, pass, setUp));
  if (isFirst && call.slipsFirst) value = slipped(chance, value);
  // Less than this no field takes as a lift.
  return { ...ask, value: Math.max(0.02, value), pass, setUp };
}

/** Takes the readings asked for, one after the other. */
export function takeReadings(chance: Chance, call: TrueCall, asks: readonly Asked[]): ExplainReading[] {
  const readings: ExplainReading[] = [];
  for (const ask of asks) readings.push(takeReading(chance, call, ask, readings));
  return readings;
}
