import { springsOf } from '../springs/nested.ts';
import { lacking } from './gap-calculation.ts';
import type { ConsequenceInput } from './types.ts';

type Spring = ConsequenceInput['spring'];
type Figure = 'installedHeight' | 'seatLoad' | 'rate' | 'solidHeight';

const NAMES: Readonly<Record<Figure, string>> = {
  installedHeight: 'installed height',
  seatLoad: 'seat load',
  rate: 'spring rate',
  solidHeight: 'coil-bind height',
};

/** What is lacking of a spring; of a nest, of which of the two: what one of them has is not asked for again. */
export function springNeeds(spring: Spring, figures: readonly Figure[]): string[] {
  if (spring.nest === undefined)
    return lacking(Object.fromEntries(figures.map((figure) => [NAMES[figure], spring[figure]])));
  const { outer, inner } = springsOf(spring.nest);
  return figures.flatMap((figure) => {
    // The inner one stands at the outer one’s height where its own is not said.
    const both = { outer: outer[figure], ...(figure === 'installedHeight' ? {} : { inner: inner[figure] }) };
    return lacking(both).map((name) => `${NAMES[figure]} of the ${name} spring`);
  });
}
