import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { enteredView, moment, quantityView } from '../../../shared/schemas/answer-parts.ts';
import { PART_KINDS, PART_TOOLS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { HandPart } from './hand-parts.ts';
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
    partId: z.uuid().optional().meta({ description: 'which part in the hand; the first has none' }),
    tool: z.enum(keysOf(PART_TOOLS)),
    within: enteredView.optional().meta({ description: 'how far off it may be, where that was typed' }),
    count: z.int().optional().meta({ description: 'threads counted over that length' }),
    how: z
      .string()
      .meta({ description: 'tool and half-width as they are read out; empty for what is no size' }),
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
    partId: reading.partId,
    tool: reading.tool,
    within: reading.within,
    count: reading.count,
    how: reading.how,
  });

export const handPartView = z
  .object({
    id: z.uuid().optional().meta({ description: 'the first part of a build has none' }),
    name: z.string(),
    armId: z.uuid().optional().meta({ description: 'which arm of the build it is' }),
    seq: z.int(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'PartInHand' });

export const showHandPart = (part: HandPart) =>
  answer(handPartView, {
    id: part.id,
    name: part.name,
    armId: part.armId,
    seq: part.seq,
    by: part.by,
    at: part.at.toISOString(),
  });
