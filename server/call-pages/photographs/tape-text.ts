import { ifSaid, tellEvents } from '../../call/tell-events.ts';
import { PHOTOGRAPH_EVENTS } from '../../records/photographs/events.ts';

/** What photographs say on the tape. */
export const PHOTOGRAPHS_TOLD = tellEvents(PHOTOGRAPH_EVENTS, {
  'photograph-kept': ({ caption }) => ({ kind: 'note', text: `Photograph kept${ifSaid(': ', caption)}` }),
});
