import { GOALS } from '../../shared/schemas/words.ts';
import type { EventName } from '../call/all-events.ts';
import { BUILD_TOLD } from '../call/spec/tape-text.ts';
import { type TapeNames, type TapeText, type Tell, tellEvents } from '../call/tell-events.ts';
import { WORKINGS_TOLD } from '../call/worked/tape-text.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import { CALL_EVENTS } from '../records/calls/events.ts';
import { LASH_TOLD } from '../steps/adjuster/tape-text.ts';
import { CONSEQUENCES_TOLD } from '../steps/consequences/tape-text.ts';
import { MARKS_TOLD } from '../steps/geometry/tape-text.ts';
import { PART_TOLD } from '../steps/identify/tape-text.ts';
import { NOTES_TOLD } from '../steps/notes/tape-text.ts';
import { ARMS_TOLD } from '../steps/parts/tape-text.ts';
import { ANSWERS_TOLD, READINGS_TOLD, SET_UPS_TOLD } from '../steps/ratio/tape-text.ts';
import { SHEET_TOLD } from '../steps/sheet/tape-text.ts';
import { TRIAGE_TOLD } from '../steps/triage/tape-text.ts';
import { PHOTOGRAPHS_TOLD } from './photographs/tape-text.ts';
import { LINKS_TOLD } from './sharing/tape-text.ts';

const CALL_TOLD = tellEvents(CALL_EVENTS, {
  'call-opened': ({ number, goal }) => ({
    kind: 'note',
    text: `Call ${number} opened: ${GOALS[goal].toLowerCase()}`,
  }),
  'call-closed': ({ outcome }) => ({ kind: 'note', text: `Call closed: ${outcome}` }),
});

/** Every event has its line: one that nobody tells does not compile. */
export const TOLD: Readonly<Record<EventName, Tell>> = {
  ...ANSWERS_TOLD,
  ...ARMS_TOLD,
  ...BUILD_TOLD,
  ...CALL_TOLD,
  ...CONSEQUENCES_TOLD,
  ...LASH_TOLD,
  ...LINKS_TOLD,
  ...MARKS_TOLD,
  ...NOTES_TOLD,
  ...PART_TOLD,
  ...PHOTOGRAPHS_TOLD,
  ...READINGS_TOLD,
  ...SET_UPS_TOLD,
  ...SHEET_TOLD,
  ...TRIAGE_TOLD,
  ...WORKINGS_TOLD,
};

const TELLS: ReadonlyMap<string, Tell> = new Map(Object.entries(TOLD));

/** An event in words; one that can't be read is told by its name, and the export has it as it was kept. */
export function tapeText(event: Pick<RecordedEvent, 'kind' | 'data'>, names: TapeNames): TapeText {
  const told = TELLS.get(event.kind)?.(event, names);
  return told ?? { kind: 'note', text: event.kind.replaceAll('-', ' ') };
}
