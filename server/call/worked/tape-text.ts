import { WORKING_EVENTS } from '../../records/workings/events.ts';
import { tellEvents } from '../tell-events.ts';

/** What kept computations say on the tape. */
export const WORKINGS_TOLD = tellEvents(WORKING_EVENTS, {
  'working-kept': ({ title }) => ({ kind: 'result', text: `${title}: computed and kept` }),
});
