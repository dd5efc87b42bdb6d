import type { Case } from './case.ts';
import type { Cause } from './types.ts';

/** It was looked for and not found, or said not to be so: it is neither listed nor asked about. */
export const isRuledOut = ({ input: { ruledOut = [], denied = [] } }: Case, cause: Cause): boolean =>
  ruledOut.includes(cause) || denied.includes(cause);

/** Can any valve reading still show the mistake, or do all carry the flag that puts it right? */
export function isFelt(given: Case, cause: Cause): boolean {
  const valves = given.input.readings.filter((reading) => reading.of === 'valve-lift');
  switch (cause) {
    case 'turn-too-many':
    case 'turn-too-few':
    case 'hand-read-backwards':
      return valves.some((v) => !v.counted);
    case 'lash-left-in':
      return valves.some((v) => !v.lashSet && !v.otherValve);
    case 'plunger-tilted':
      return valves.some((v) => !v.aligned);
    default:
      return true;
  }
}
