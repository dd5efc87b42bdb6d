import { z } from 'zod';

/** Said of what takes turning the engine: under a stop nothing else of it is kept. */
export const BEFORE_STOP = {
  beforeStop: z.boolean().optional().meta({
    description:
      'it was read before the stop that stands, as whoever sends it says; under a stop only that is kept, and it is recorded with it',
  }),
};
