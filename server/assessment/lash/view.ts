import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView, sideView } from '../../../shared/schemas/answer-parts.ts';
import type { LashGrowth } from '../../mechanics/lash/types.ts';
import { lashLineView, nutView, showLashLine } from '../../records/lash-log/view.ts';
import type { LashLog } from './lash-log.ts';

const growthView = z.object({
  cylinder: z.int(),
  valve: sideView,
  atLeast: quantityView.optional().meta({ description: 'the least it can have grown by; negative closed' }),
  atMost: quantityView.optional(),
  nut: nutView,
  heatDiffers: z.boolean().meta({ description: 'one hot and one cold: not set against each other' }),
  again: z.boolean().meta({ description: 'it had grown over the limit before it was last set' }),
});

export const lashLogView = z
  .object({
    lines: z.array(lashLineView),
    limit: z.object({ growth: quantityView, source: z.string() }),
    growths: z.array(growthView),
    questions: z.array(
      z.object({
        code: z.string(),
        cylinder: z.int().optional(),
        valve: sideView.optional(),
        ask: z.string(),
        size: z.string(),
        test: z.string(),
      }),
    ),
    stop: z.boolean().meta({ description: 'a gap grew again after it was set again' }),
  })
  .meta({ id: 'LashLog' });

const showGrowth = (growth: LashGrowth) =>
  answer(growthView, {
    cylinder: growth.cylinder,
    valve: growth.valve,
    atLeast: growth.low === undefined ? undefined : inInches(growth.low),
    atMost: growth.high === undefined ? undefined : inInches(growth.high),
    nut: growth.nut,
    heatDiffers: growth.heatDiffers,
    again: growth.again,
  });

export const showLashLog = (log: LashLog) =>
  answer(lashLogView, {
    lines: log.lines.map(showLashLine),
    limit: { growth: log.limit.value, source: log.limit.source },
    growths: log.growths.map(showGrowth),
    questions: log.questions,
    stop: log.again.length > 0,
  });
