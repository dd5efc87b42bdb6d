import type { StopReason } from '../assessment.ts';
import { lowerFirst } from './said.ts';

/** What has to be done before a stop may be lifted, as each side does it. */
type WayOut = Required<Pick<StopReason, 'wayOut' | 'wayOutAtBench'>>;

/** What a person saw or was told of is looked at by somebody who can, before anything else. */
export const SHOP_LOOKS: WayOut = {
  wayOut: 'A qualified shop looks at it first; the desk lifts the stop with what was found.',
  wayOutAtBench: 'Have a qualified shop look at it first, and say what was found.',
};

/** A reading that was wrong takes its stop with it. */
export const STRUCK_BY_DESK = 'The desk strikes out a wrong reading, with the reason.';

/**
 * The way out of a stop that readings raise: each part of it can be done while nobody turns the engine, and reading again
 * is done only once the stop is lifted for that.
 *
 * @param look what is looked at with nothing turned, as something to do: `look at nut and stud`
 * @param answered what was found is on the record, so that the desk may lift the stop
 */
export function wayOutOf(look: string, answered: boolean): WayOut {
  const first = answered
    ? 'What was found is answered.'
    : `With nothing turned, ${look}, and answer what was found.`;
  return {
    wayOut: `${first} The desk then lifts the stop, or strikes out a wrong reading, with the reason. To read it again, the desk first lifts the stop for that: by hand only.`,
    wayOutAtBench: `${first} Leave it until the desk has lifted the stop.`,
  };
}

/** What cannot be done while nobody turns it, as something that waits. */
export const afterTheStop = (todo: string): string =>
  `Not while the stop stands; after it: ${lowerFirst(todo)}`;
