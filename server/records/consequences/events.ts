import { z } from 'zod';
import { GAP_KINDS } from '../../../shared/schemas/sheet.ts';
import { keysOf, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

const gap = z.object({
  name: z.enum(GAP_KINDS),
  before: z.string().optional(),
  after: z.string().optional(),
  basis: z.enum(['measured', 'calculated']).optional(),
  /** What is missing to judge it; then it has no verdict. */
  lacks: z.array(z.string()).optional(),
  verdict: z.enum(['clear', 'close', 'short']).optional(),
});

/** What a ratio does on one valve, or on a side that nothing was read of, kept with the limits it was judged by. */
export const CONSEQUENCE_EVENTS = defineEvents({
  'consequences-kept': z.object({
    /** The set-up that its ratio was read in. */
    setUpId: z.uuid().optional(),
    cylinder: z.int().optional(),
    valve: z.enum(keysOf(VALVES)),
    revision: z.object({ setUp: z.int().optional(), now: z.int() }),
    ratioBefore: z.number().optional(),
    ratioAfter: z.number().optional(),
    ratioHalfWidth: z.number().optional(),
    spring: z.enum(['light', 'running']).optional(),
    /** Some gap is short. */
    stop: z.boolean(),
    gaps: z.array(gap),
    limits: z.array(z.object({ name: z.string(), value: z.string(), source: z.string(), revision: z.int() })),
  }),
  /** Figures that were kept in a line no longer count; the line stays. */
  'consequences-struck': z.object({ line: z.int(), reason: z.string() }),
});
