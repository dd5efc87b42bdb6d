import { z } from 'zod';
import { CAN_BE } from './can-be.ts';
import { entered } from './entered.ts';
import { listOf } from './fields.ts';
import { someWords } from './texts.ts';

/** A shop's own figure for one limit; the service knows which names there are. */
export const newLimit = z.strictObject({
  name: someWords('which limit', 60),
  value: entered('length', 'the least gap, or the figure the limit stands for', CAN_BE.limit, {
    sign: 'not-negative',
  }),
  source: someWords('where the figure is from, as it will be shown beside it', 500),
});
export const changeLimits = z.strictObject({ limits: listOf(newLimit, 'limits to change', 1, 50) });
export type NewLimit = z.output<typeof newLimit>;
