import { BUILD_EVENTS } from '../../records/builds/events.ts';
import { ifSaid, tellEvents } from '../tell-events.ts';

/** What revisions of the build say on the tape. */
export const BUILD_TOLD = tellEvents(BUILD_EVENTS, {
  'build-revised': ({ revision, reason }) => ({
    kind: 'note',
    text: `Build revision ${revision}${ifSaid(': ', reason)}`,
  }),
});
