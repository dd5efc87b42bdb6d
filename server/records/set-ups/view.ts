import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment, sideView } from '../../../shared/schemas/answer-parts.ts';
import { method } from '../../../shared/schemas/method.ts';
import type { SetUp } from './set-ups.ts';

export const setUpView = z
  .object({
    id: z.uuid(),
    buildId: z.uuid(),
    number: z.int(),
    revision: z.int(),
    cylinder: z.int(),
    valve: sideView,
    armId: z.uuid().optional(),
    method,
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'SetUp' });

export const showSetUp = (setUp: SetUp) =>
  answer(setUpView, {
    id: setUp.id,
    buildId: setUp.buildId,
    number: setUp.number,
    revision: setUp.revision,
    cylinder: setUp.cylinder,
    valve: setUp.valve,
    armId: setUp.armId,
    method: setUp.method,
    by: setUp.by,
    at: setUp.at.toISOString(),
  });
