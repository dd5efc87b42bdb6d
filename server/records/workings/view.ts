import { z } from 'zod';
import type { Working } from './workings.ts';

/** A kept computation as JSON has it. */
export const workingView = z
  .object({
    id: z.uuid(),
    computation: z.string(),
    inputs: z.record(z.string(), z.unknown()),
    answer: z.record(z.string(), z.unknown()),
    revision: z.int(),
    seq: z.int(),
    by: z.string(),
    at: z.iso.datetime(),
  })
  .meta({ id: 'Working' });

export const showWorking = (working: Working) => ({ ...working, at: working.at.toISOString() });
