import { tellEvents } from '../../call/tell-events.ts';
import { SHARE_LINK_EVENTS } from '../../records/share-links/events.ts';

/** What links say on the tape. */
export const LINKS_TOLD = tellEvents(SHARE_LINK_EVENTS, {
  'link-made': ({ holder }) => ({ kind: 'note', text: `Link made for ${holder}` }),
  'link-revoked': ({ holder }) => ({ kind: 'note', text: `Link of ${holder} ended` }),
});
