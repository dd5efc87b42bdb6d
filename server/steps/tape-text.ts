import type { EventName } from '../assessment/all-events.ts';
import { CALL_TOLD } from '../call/tape-text.ts';
import type { Tell } from '../call/tell-events.ts';
import { LASH_TOLD } from './adjuster/tape-text.ts';
import { CONSEQUENCES_TOLD } from './consequences/tape-text.ts';
import { MARKS_TOLD } from './geometry/tape-text.ts';
import { PART_TOLD } from './identify/tape-text.ts';
import { NOTES_TOLD } from './notes/tape-text.ts';
import { ARMS_TOLD } from './parts/tape-text.ts';
import { RATIO_TOLD } from './ratio/tape-text.ts';
import { SHEET_TOLD } from './sheet/tape-text.ts';
import { TRIAGE_TOLD } from './triage/tape-text.ts';

/** The line of every event: one that nobody tells does not compile. */
export const TOLD: Readonly<Record<EventName, Tell>> = {
  ...CALL_TOLD,
  ...TRIAGE_TOLD,
  ...ARMS_TOLD,
  ...PART_TOLD,
  ...RATIO_TOLD,
  ...SHEET_TOLD,
  ...CONSEQUENCES_TOLD,
  ...MARKS_TOLD,
  ...LASH_TOLD,
  ...NOTES_TOLD,
};
