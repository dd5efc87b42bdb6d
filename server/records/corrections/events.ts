import { z } from 'zod';

/** What every event says that puts an entry in the place of another, or strikes one out. */
export const correction = {
  /** The old entry as it was read. */
  replaces: z.string(),
  replacesId: z.uuid(),
  reason: z.string(),
};
