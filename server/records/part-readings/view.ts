import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { quantityView } from '../../../shared/schemas/answer-parts.ts';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { PartReading } from './part-readings.ts';

export const partReadingView = z
  .object({
    ...entryShape,
    kind: z.enum(keysOf(PART_KINDS)),
    typed: z.string(),
    size: quantityView.optional(),
    word: z.string().optional(),
    readAs: z.string(),
    place: z.string(),
  })
  .meta({ id: 'PartReading' });

export const showPartReading = (reading: PartReading) =>
  answer(partReadingView, {
    ...entryFields(reading),
    kind: reading.kind,
    typed: reading.typed,
    size: reading.size,
    word: reading.word,
    readAs: reading.readAs,
    place: reading.place,
  });
