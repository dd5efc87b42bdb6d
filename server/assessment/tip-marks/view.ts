import { z } from 'zod';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import { MARK_FOUND, MARK_SIDES, PUSHROD_OVER } from '../../../shared/schemas/tip-mark.ts';
import { keysOf, SPRINGS } from '../../../shared/schemas/words.ts';
import { quantityView } from '../../api/views.ts';
import { entryShape, showEntry } from '../../records/corrections/view.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';
import type { JudgedMarks } from './judged.ts';

const enteredView = quantityView.extend({ typed: z.string(), readAs: z.string() });
const valve = z.enum(['intake', 'exhaust']);

export const tipMarkView = z
  .object({
    ...entryShape,
    cylinder: z.int(),
    valve,
    width: enteredView,
    side: z.enum(keysOf(MARK_SIDES)),
    off: enteredView.optional(),
    pushrod: enteredView.optional(),
    pushrodOver: z.enum(keysOf(PUSHROD_OVER)),
    stem: enteredView.optional(),
    spring: z.enum(keysOf(SPRINGS)),
    found: z.enum(keysOf(MARK_FOUND)),
    armId: z.uuid().optional(),
    readAs: z.string(),
  })
  .meta({ id: 'TipMark' });

const kept = (entry: Entered) => ({ ...entry });

export function showTipMark(mark: TipMark): z.output<typeof tipMarkView> {
  const { width, off, pushrod, stem, armId, ...rest } = mark;
  return {
    ...showEntry(rest),
    width: kept(width),
    ...(off === undefined ? {} : { off: kept(off) }),
    ...(pushrod === undefined ? {} : { pushrod: kept(pushrod) }),
    ...(stem === undefined ? {} : { stem: kept(stem) }),
    ...(armId === undefined ? {} : { armId }),
  };
}

export const judgedMarksView = z
  .object({
    marks: z.array(tipMarkView),
    limit: z.object({ overLeast: quantityView, source: z.string() }),
    valves: z.array(
      z.object({
        cylinder: z.int(),
        valve,
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
      }),
    ),
  })
  .meta({ id: 'TipMarks' });

const inches = (si: number) => ({ value: fromSi(si, 'in').value, unit: 'in' as const });

export function showJudgedMarks(judged: JudgedMarks): z.output<typeof judgedMarksView> {
  const { value, unit } = judged.limit.value;
  return {
    marks: judged.marks.map(showTipMark),
    limit: { overLeast: { value, unit }, source: judged.limit.source },
    valves: judged.valves.map((each) => ({
      cylinder: each.cylinder,
      valve: each.valve,
      markIds: each.marks.map(({ id }) => id),
      ...(each.least.value === undefined ? {} : { leastSweep: inches(each.least.value) }),
      ...(each.lookAgainOver === undefined ? {} : { lookAgainOver: inches(each.lookAgainOver) }),
      from: [...each.least.from],
      missing: [...each.least.missing],
      questions: each.questions.map((question) => ({ ...question })),
    })),
  };
}
