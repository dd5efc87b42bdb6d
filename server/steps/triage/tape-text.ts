import { CONTACT, ENGINE_STATES } from '../../../shared/schemas/words.ts';
import { tellEvents } from '../../call/tell-events.ts';
import { TRIAGE_EVENTS } from '../../records/calls/events.ts';

/** What the first question of a call and its hold say on the tape. */
export const TRIAGE_TOLD = tellEvents(TRIAGE_EVENTS, {
  triage: ({ engineState, contact }) => ({
    kind: 'answer',
    text: `${ENGINE_STATES[engineState]}. ${CONTACT[contact]}.`,
  }),
  'hold-set': ({ reason }) => ({ kind: 'hold', text: `Do not turn it: ${reason}` }),
  'hold-lifted': ({ reason }) => ({ kind: 'note', text: `Stop lifted: ${reason}` }),
});
