import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView, sideView } from '../../../shared/schemas/answer-parts.ts';
import { showTipMark, tipMarkView } from '../../records/tip-marks/view.ts';
import type { JudgedMarks, MarkedValve } from './judged.ts';

const markedValveView = z.object({
  cylinder: z.int(),
  valve: sideView,
  markIds: z.array(z.uuid()),
  leastSweep: quantityView
    .optional()
    .meta({ description: 'the least this lift can have on this arm, by the computation roller-sweep' }),
  lookAgainOver: quantityView.optional().meta({ description: 'the least and the limit together' }),
  from: z.array(z.string()).meta({ description: 'what the least sweep is calculated from' }),
  missing: z.array(z.string()).meta({ description: 'what is not known yet for it' }),
  questions: z.array(
    z.object({ code: z.string(), ask: z.string(), size: z.string().optional(), test: z.string() }),
  ),
});

export const judgedMarksView = z
  .object({
    marks: z.array(tipMarkView),
    limit: z.object({ overLeast: quantityView, source: z.string() }),
    valves: z.array(markedValveView),
  })
  .meta({ id: 'TipMarks' });

const showMarkedValve = (valve: MarkedValve) =>
  answer(markedValveView, {
    cylinder: valve.cylinder,
    valve: valve.valve,
    markIds: valve.marks.map(({ id }) => id),
    leastSweep: valve.least.value === undefined ? undefined : inInches(valve.least.value),
    lookAgainOver: valve.lookAgainOver === undefined ? undefined : inInches(valve.lookAgainOver),
    from: valve.least.from,
    missing: valve.least.missing,
    questions: valve.questions,
  });

export const showJudgedMarks = (judged: JudgedMarks) =>
  answer(judgedMarksView, {
    marks: judged.marks.map(showTipMark),
    limit: { overLeast: judged.limit.value, source: judged.limit.source },
    valves: judged.valves.map(showMarkedValve),
  });
