/** Said to whoever would take the reading again: nobody turns it before the stop is lifted for that. */
const READ_AGAIN =
  'To have it read again, the desk first lifts the stop, with the reason that it is turned by hand only to read again.';

/** A reading that was wrong takes its stop with it. */
export const STRUCK_BY_DESK =
  'If it was read or written wrong, the desk strikes the reading out, with the reason.';

/**
 * The way out of a stop that readings raise: each part of it can be done while nobody turns the engine.
 *
 * @param look what is looked at with nothing turned, as something to do: `look at nut and stud`
 * @param answered what was found is on the record, so that the desk may lift the stop
 */
export function wayOutOf(look: string, answered: boolean): string {
  const first = answered
    ? 'What was found is answered: the desk can lift the stop, with the reason.'
    : `With nothing turned, ${look}, and answer what was found; then the desk can lift the stop, with the reason.`;
  return `${first} ${STRUCK_BY_DESK} ${READ_AGAIN}`;
}

/** What cannot be done while nobody turns it, as something that waits. */
export const afterTheStop = (todo: string): string =>
  `Not while the stop stands; after it: ${todo.charAt(0).toLowerCase()}${todo.slice(1)}`;
