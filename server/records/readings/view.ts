import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { enteredView, quantityView } from '../../../shared/schemas/answer-parts.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { Reading } from './readings.ts';

export const readingView = z
  .object({
    ...entryShape,
    setUpId: z.uuid(),
    kind: z.string(),
    pass: z.int(),
    peak: enteredView,
    zeroReturn: quantityView.optional(),
    atLobeLift: enteredView.optional(),
    counted: z.boolean(),
  })
  .meta({ id: 'Reading' });

export const showReading = (reading: Reading) =>
  answer(readingView, {
    ...entryFields(reading),
    setUpId: reading.setUpId,
    kind: reading.kind,
    pass: reading.pass,
    peak: reading.peak,
    zeroReturn: reading.zeroReturn,
    atLobeLift: reading.atLobeLift,
    counted: reading.counted,
  });
