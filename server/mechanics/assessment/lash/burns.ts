import { placeOf } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';

/** Source: common practice, no published source. */
export const BURNS = 'a valve that is held off its seat burns.';

/** Why a valve without a gap is not run, whatever sets its gap. */
export const notRunSaid = (place: ValvePlace): string =>
  `Do not run it: ${placeOf(place)} has no gap, and ${BURNS}`;
