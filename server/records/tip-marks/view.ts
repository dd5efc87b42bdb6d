import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { enteredView, valveView } from '../../../shared/schemas/answer-parts.ts';
import { MARK_FOUND, MARK_SIDES, PUSHROD_OVER } from '../../../shared/schemas/tip-mark.ts';
import { keysOf, SPRINGS } from '../../../shared/schemas/words.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { TipMark } from './tip-mark-table.ts';

export const tipMarkView = z
  .object({
    ...entryShape,
    cylinder: z.int(),
    valve: valveView,
    width: enteredView,
    side: z.enum(keysOf(MARK_SIDES)),
    off: enteredView.optional(),
    pushrod: enteredView.optional(),
    pushrodOver: z.enum(keysOf(PUSHROD_OVER)),
    shims: enteredView.optional(),
    stem: enteredView.optional(),
    spring: z.enum(keysOf(SPRINGS)),
    found: z.enum(keysOf(MARK_FOUND)),
    armId: z.uuid().optional(),
    readAs: z.string(),
  })
  .meta({ id: 'TipMark' });

export const showTipMark = (mark: TipMark) =>
  answer(tipMarkView, {
    ...entryFields(mark),
    cylinder: mark.cylinder,
    valve: mark.valve,
    width: mark.width,
    side: mark.side,
    off: mark.off,
    pushrod: mark.pushrod,
    pushrodOver: mark.pushrodOver,
    shims: mark.shims,
    stem: mark.stem,
    spring: mark.spring,
    found: mark.found,
    armId: mark.armId,
    readAs: mark.readAs,
  });
