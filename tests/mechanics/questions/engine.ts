import fc from 'fast-check';
import type { Pass, QuestionInput } from '../../../server/mechanics/questions/types.ts';

/** An engine as it is, and how far its readings scatter. Inches. */
export interface Engine {
  readonly cardLobe: number;
  readonly otherCardLobe: number;
  /** True lobe less the card's. */
  readonly cardError: number;
  readonly nominal: number;
  /** True ratio on the light spring over the nominal, less one. */
  readonly over: number;
  readonly spring: 'light' | 'running';
  /** What the running spring takes off the lift. */
  readonly flex: number;
  readonly lifter: 'solid' | 'locked';
  readonly lash: number;
  /** Errors of three passes at the valve and three at the lobe, and of the zero after each. */
  readonly valveNoise: readonly [number, number, number];
  readonly lobeNoise: readonly [number, number, number];
  readonly zeros: readonly [number, number, number];
  readonly lobeSource: 'card' | 'indicator';
  readonly perTurn: number;
  /** Peaks of other valves less this one's. */
  readonly others: readonly number[];
}

/** Common nominals: common practice, no published source. */
const NOMINALS = [1.45, 1.5, 1.52, 1.55, 1.6, 1.65, 1.7, 1.73, 1.75, 1.8];

/** Even between the bounds, in millionths; `fc.double` would crowd round zero. */
const within = (low: number, high: number) =>
  fc
    .noBias(fc.integer({ min: Math.round(low * 1e6), max: Math.round(high * 1e6) }))
    .map((each) => each / 1e6);
const three = (limit: number) =>
  fc.tuple(within(-limit, limit), within(-limit, limit), within(-limit, limit));
const toThousandth = (value: number) => Math.round(value * 1000) / 1000;

interface Limits {
  readonly over: readonly [number, number];
  readonly cardError: number;
  readonly noise: number;
  readonly springs: readonly Engine['spring'][];
}

function engines({ over, cardError, noise, springs }: Limits): fc.Arbitrary<Engine> {
  const lobe = within(0.26, 0.42).map(toThousandth);
  const apart = fc.oneof(fc.constant(0), within(0.004, 0.03), within(-0.03, -0.004));
  return fc
    .record({
      cardLobe: lobe,
      apart,
      cardError: within(-cardError, cardError),
      nominal: fc.constantFrom(...NOMINALS),
      over: within(...over),
      spring: fc.constantFrom(...springs),
      flex: within(0.005, 0.04),
      lifter: fc.constantFrom('solid' as const, 'locked' as const),
      lash: within(0.01, 0.026).map(toThousandth),
      valveNoise: three(noise),
      lobeNoise: three(noise),
      zeros: three(0.001),
      lobeSource: fc.constantFrom('card' as const, 'indicator' as const),
      others: fc.array(within(-0.008, 0.008), { maxLength: 15 }),
    })
    .map(({ apart: off, ...rest }) => ({
      ...rest,
      otherCardLobe: toThousandth(rest.cardLobe + off),
      perTurn: 0.1,
    }));
}

/**
 * Clean engines as they come: noise of a thousandth, a light ratio from 1 % under to 4.5 % over, a running spring
 * that takes .005 to .040 in. Common practice, no published source.
 */
export const cleanEngine = engines({
  over: [-0.01, 0.045],
  cardError: 0.0025,
  noise: 0.001,
  springs: ['light', 'running'],
});

/** Engines that give what they are sold as, on a light spring: what is wrong with the readings is the mistake. */
export const trueEngine = engines({
  over: [-0.002, 0.002],
  cardError: 0.001,
  noise: 0.001,
  springs: ['light'],
});

export const lobeOf = (engine: Engine) => engine.cardLobe + engine.cardError;

/** What the valve really does at zero lash. */
export function liftOf(engine: Engine): number {
  const flex = engine.spring === 'running' ? engine.flex : 0;
  return lobeOf(engine) * engine.nominal * (1 + engine.over) - flex;
}

/** Passes as they are read off a dial of a thousandth, to the half division. */
export function passes(
  name: string,
  lift: number,
  noise: readonly number[],
  zeros?: readonly number[],
): Pass[] {
  const toHalf = (value: number) => Math.round(value * 2000) / 2000;
  return noise.map((error, i) => {
    const zero = zeros?.[i];
    const pass = { id: `${name}${i + 1}`, lift: toHalf(lift + error) };
    return zero === undefined ? pass : { ...pass, zeroReturn: toHalf(zero) };
  });
}

/** The readings of an engine with nothing done wrong. */
export function readCleanly(engine: Engine): QuestionInput {
  const lift = liftOf(engine);
  const atLobe = passes('lobe', lobeOf(engine), engine.lobeNoise, engine.zeros);
  return {
    valvePasses: passes('valve', lift, engine.valveNoise, engine.zeros),
    lobePasses: engine.lobeSource === 'card' ? [] : atLobe,
    spring: engine.spring,
    lifter: engine.lifter,
    lash: 'zero',
    restsOn: 'retainer-flat',
    alignment: 'parallel',
    perTurn: engine.perTurn,
    graduation: 0.001,
    travel: 1,
    pushedIn: 0.9,
    lobeSource: engine.lobeSource,
    cardLobeLift: engine.cardLobe,
    otherCardLobeLift: engine.otherCardLobe,
    cardLash: engine.lash,
    cardRatio: engine.nominal,
    nominalRatio: engine.nominal,
    otherPeaks: engine.others.map((off) => Math.round((lift + off) * 2000) / 2000),
  };
}

/** The lobe read at the lifter, whatever the set-up said. */
export function withLobeRead(engine: Engine, lobe = lobeOf(engine)): QuestionInput {
  return {
    ...readCleanly(engine),
    lobeSource: 'indicator',
    lobePasses: passes('lobe', lobe, engine.lobeNoise, engine.zeros),
  };
}

/** The same readings with another lift at the valve. */
export function withValveLift(engine: Engine, lift: number): QuestionInput {
  return { ...readCleanly(engine), valvePasses: passes('valve', lift, engine.valveNoise, engine.zeros) };
}
