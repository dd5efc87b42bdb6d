/** Where hints of changes are told to every process: the first word of one says what has changed. */
export const EVENT_CHANNEL = 'benchcall_event';
