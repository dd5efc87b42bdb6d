import { GOALS, UNIT_SYSTEMS } from '../../shared/schemas/words.ts';
import { BUILD_EVENTS } from '../records/builds/events.ts';
import { CALL_EVENTS } from '../records/calls/events.ts';
import { PHOTOGRAPH_EVENTS } from '../records/photographs/events.ts';
import { SHARE_LINK_EVENTS } from '../records/share-links/events.ts';
import { WORKING_EVENTS } from '../records/workings/events.ts';
import { ifSaid, tellEvents } from './tell-events.ts';

/** What the events that belong to no one step say on the tape. */
export const CALL_TOLD = {
  ...tellEvents(CALL_EVENTS, {
    'call-opened': ({ number, goal }) => ({
      kind: 'note',
      text: `Call ${number} opened: ${GOALS[goal].toLowerCase()}`,
    }),
    'call-closed': ({ outcome }) => ({ kind: 'note', text: `Call closed: ${outcome}` }),
  }),
  ...tellEvents(BUILD_EVENTS, {
    'units-chosen': ({ units }) => ({ kind: 'note', text: `Units: ${UNIT_SYSTEMS[units].toLowerCase()}` }),
    'build-revised': ({ revision, reason }, { revisionSaid }) => ({
      kind: 'note',
      text: `Build revision ${revision}${ifSaid(': ', reason)}${ifSaid('; ', revisionSaid?.(revision))}`,
    }),
  }),
  ...tellEvents(WORKING_EVENTS, {
    'working-kept': ({ title }, { inputsSaid }) => ({
      kind: 'result',
      text: `${title}: computed and kept${ifSaid('; ', inputsSaid)}`,
    }),
    'working-struck': ({ replaces, reason }) => ({
      kind: 'note',
      text: `Worked out, ${replaces}: struck out, ${reason}`,
    }),
  }),
  ...tellEvents(PHOTOGRAPH_EVENTS, {
    'photograph-kept': ({ caption }) => ({ kind: 'note', text: `Photograph kept${ifSaid(': ', caption)}` }),
  }),
  ...tellEvents(SHARE_LINK_EVENTS, {
    'link-made': ({ holder }) => ({ kind: 'note', text: `Link made for ${holder}` }),
    'link-revoked': ({ holder }) => ({ kind: 'note', text: `Link of ${holder} ended` }),
  }),
};
