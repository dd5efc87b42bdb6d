import { ANSWER_EVENTS } from '../records/answers/events.ts';
import { ARM_EVENTS } from '../records/arms/events.ts';
import { BUILD_EVENTS } from '../records/builds/events.ts';
import { CALL_EVENTS, TRIAGE_EVENTS } from '../records/calls/events.ts';
import { LASH_EVENTS } from '../records/lash-log/events.ts';
import { NOTE_EVENTS } from '../records/notes/events.ts';
import { PART_READING_EVENTS } from '../records/part-readings/events.ts';
import { PHOTOGRAPH_EVENTS } from '../records/photographs/events.ts';
import { READING_EVENTS } from '../records/readings/events.ts';
import { SET_UP_EVENTS } from '../records/set-ups/events.ts';
import { SHARE_LINK_EVENTS } from '../records/share-links/events.ts';
import { SHEET_EVENTS } from '../records/sheet/events.ts';
import { TIP_MARK_EVENTS } from '../records/tip-marks/events.ts';
import { WORKING_EVENTS } from '../records/workings/events.ts';
import { CONSEQUENCE_EVENTS } from './consequences/events.ts';

/** Every event that a build's log may hold. */
export const ALL_EVENTS = {
  ...ANSWER_EVENTS,
  ...ARM_EVENTS,
  ...BUILD_EVENTS,
  ...CALL_EVENTS,
  ...CONSEQUENCE_EVENTS,
  ...LASH_EVENTS,
  ...NOTE_EVENTS,
  ...PART_READING_EVENTS,
  ...PHOTOGRAPH_EVENTS,
  ...READING_EVENTS,
  ...SET_UP_EVENTS,
  ...SHARE_LINK_EVENTS,
  ...SHEET_EVENTS,
  ...TIP_MARK_EVENTS,
  ...TRIAGE_EVENTS,
  ...WORKING_EVENTS,
};

export type EventName = keyof typeof ALL_EVENTS;
