import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { enteredView } from '../../../shared/schemas/answer-parts.ts';
import { ENGINE_HEAT, LASH_MOMENTS, NUT_STATES } from '../../../shared/schemas/lash-log.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { sheetReadingView, showSheetReading } from '../sheet/view.ts';
import type { LoggedLash } from './lash-log.ts';

export const nutView = z.enum(keysOf(NUT_STATES));

export const lashLineView = z
  .object({
    reading: sheetReadingView.meta({ description: 'the gap as it stands on the sheet; corrected there' }),
    engine: z.enum(keysOf(ENGINE_HEAT)),
    moment: z.enum(keysOf(LASH_MOMENTS)),
    nut: nutView,
    on: z.iso.date().meta({ description: 'the day it is of' }),
    doneBy: z.string(),
    shim: enteredView.optional().meta({ description: 'the shim that was in with that gap' }),
  })
  .meta({ id: 'LashLine' });

export const showLashLine = (line: LoggedLash) =>
  answer(lashLineView, {
    reading: showSheetReading(line.reading),
    engine: line.engine,
    moment: line.moment,
    nut: line.nut,
    on: line.on,
    doneBy: line.doneBy,
    shim: line.shim,
  });
