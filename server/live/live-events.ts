import { z } from 'zod';
import { eventView } from '../records/whole-build/event-view.ts';

/** Somebody else who has the build open. */
export const presentView = z.object({ who: z.string(), kind: z.string(), step: z.string() });

/** What a live stream sends, by the name of its event. */
export const LIVE_EVENTS = {
  entry: eventView,
  presence: z.array(presentView),
  beat: z.object({}),
} as const;

export type LiveEvents = typeof LIVE_EVENTS;
