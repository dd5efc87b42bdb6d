import { defined } from '../../../shared/defined.ts';
import { EQUAL } from '../kit/nearest.ts';
import { inches, loadSaid } from '../kit/say-inches.ts';

/** One spring of a nest as it sits on the valve, SI. */
export interface OneSpring {
  readonly installedHeight?: number;
  readonly seatLoad?: number;
  readonly rate?: number;
  readonly solidHeight?: number;
}

/** The two of a nest; the inner one sits at the outer one’s height where its own is not said. */
export interface Nest {
  readonly outer: OneSpring;
  readonly inner: OneSpring;
}

const sum = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined || b === undefined ? undefined : a + b;

const roomOf = ({ installedHeight, solidHeight }: OneSpring): number | undefined =>
  installedHeight === undefined || solidHeight === undefined ? undefined : installedHeight - solidHeight;

/** Height of the outer one at which the first of the two goes solid. */
function solidOf({ outer, inner }: Nest): number | undefined {
  const own = inner.installedHeight ?? outer.installedHeight;
  if (own === undefined || own === outer.installedHeight)
    return outer.solidHeight === undefined || inner.solidHeight === undefined
      ? undefined
      : Math.max(outer.solidHeight, inner.solidHeight);
  const [ofOuter, ofInner] = [roomOf(outer), roomOf({ ...inner, installedHeight: own })];
  return outer.installedHeight === undefined || ofOuter === undefined || ofInner === undefined
    ? undefined
    : outer.installedHeight - Math.min(ofOuter, ofInner);
}

type NestSpringName = 'outer' | 'inner';

/** The two by name, each with the height that it stands at. */
export const springsOf = ({ outer, inner }: Nest): Readonly<Record<NestSpringName, OneSpring>> => ({
  outer,
  inner: defined({ ...inner, installedHeight: inner.installedHeight ?? outer.installedHeight }),
});

/**
 * Which of the two goes solid first; where both have the same room, both. It hangs on their heights alone: the lift takes the
 * same from each.
 */
export function goesSolidFirst(nest: Nest): NestSpringName | 'both' | undefined {
  const { outer, inner } = springsOf(nest);
  const [ofOuter, ofInner] = [roomOf(outer), roomOf(inner)];
  if (ofOuter === undefined || ofInner === undefined) return undefined;
  if (Math.abs(ofOuter - ofInner) <= EQUAL) return 'both';
  return ofOuter < ofInner ? 'outer' : 'inner';
}

/**
 * Two springs on one valve as the one that they act as: loads and rates add, and the first that goes solid counts.
 *
 * Equation: F = F₁ + F₂; k = k₁ + k₂; h − hₛ = min(h₁ − hₛ₁, h₂ − hₛ₂), told at the outer one’s installed height
 *
 * @param nest [m, N, N/m] the two; what one of them lacks the nest lacks
 * @returns installed height, seat load, rate and coil-bind height of the two together
 *
 * Validity: both seated with the valve shut, and no friction between them.
 * Source: springs in parallel, general knowledge; each spring of a nest by itself: trade practice 2.9.
 */
export function asOneSpring(nest: Nest): OneSpring {
  const { outer, inner } = nest;
  return defined({
    installedHeight: outer.installedHeight,
    seatLoad: sum(outer.seatLoad, inner.seatLoad),
    rate: sum(outer.rate, inner.rate),
    solidHeight: solidOf(nest),
  });
}

const openLoad = ({ seatLoad, rate }: OneSpring, lift: number): number | undefined =>
  sum(seatLoad, rate === undefined ? undefined : rate * lift);

/** What each of the two has at full lift: room to its coil bind, and its load. */
export function nestSaid(nest: Nest, netLift: number): string[] {
  const { outer, inner } = springsOf(nest);
  const [first, second] = [outer, inner].map((one) => ({ room: roomOf(one), load: openLoad(one, netLift) }));
  const rooms =
    first?.room === undefined || second?.room === undefined
      ? []
      : [
          `two springs: the outer has ${inches(first.room - netLift)} to its coil bind at full lift, the inner ${inches(second.room - netLift)}; the lesser counts`,
        ];
  const loads =
    first?.load === undefined || second?.load === undefined
      ? []
      : [`two springs: the outer carries ${loadSaid(first.load)} open, the inner ${loadSaid(second.load)}`];
  return [...rooms, ...loads];
}
