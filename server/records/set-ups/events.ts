import { z } from 'zod';
import { MAY_BE_UNKNOWN } from '../../../shared/schemas/method.ts';
import {
  ALIGNMENTS,
  keysOf,
  LASH_STATES,
  LIFT_TOOLS,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
  VALVES,
} from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

const readAs = z.string().optional();

/** What is put right: only what was said. */
const said = z.object({
  cylinder: z.int().optional(),
  valve: z.enum(keysOf(VALVES)).optional(),
  armId: z.uuid().optional(),
  spring: z.enum(keysOf(SPRINGS)).optional(),
  lifter: z.enum(keysOf(LIFTERS)).optional(),
  lash: z.enum(keysOf(LASH_STATES)).optional(),
  lashSetting: readAs,
  tool: z.enum(keysOf(LIFT_TOOLS)).optional(),
  restsOn: z.enum(keysOf(RESTS_ON)).optional(),
  alignment: z.enum(keysOf(ALIGNMENTS)).optional(),
  graduation: readAs,
  perTurn: readAs,
  travel: readAs,
  pushedIn: readAs,
  errorLimit: readAs,
  lobeSource: z.enum(keysOf(LOBE_SOURCES)).optional(),
  lobeErrorLimit: readAs,
  notKnown: z.array(z.enum(MAY_BE_UNKNOWN)),
  struck: z.literal(true).optional(),
});

/** How readings are taken, said before the first. */
export const SET_UP_EVENTS = defineEvents({
  'set-up-started': z.object({
    setUpId: z.uuid(),
    number: z.int(),
    cylinder: z.int(),
    valve: z.enum(keysOf(VALVES)),
    spring: z.enum(keysOf(SPRINGS)),
    lifter: z.enum(keysOf(LIFTERS)),
    lash: z.enum(keysOf(LASH_STATES)),
  }),
  'set-up-put-right': z.object({
    setUpId: z.uuid(),
    number: z.int(),
    /** The valve that it stood as until then. */
    cylinder: z.int(),
    valve: z.enum(keysOf(VALVES)),
    said,
    reason: z.string(),
  }),
});
