import { z } from 'zod';
import { quantityView } from '../../../shared/schemas/answer-parts.ts';

export const word = z.enum(['agrees', 'cannot-tell', 'differs']);

export const reasonView = z.object({
  kind: z.string(),
  word: z.enum(['agrees', 'cannot-tell', 'differs', 'not-known']),
  reading: z.union([quantityView, z.string()]),
  madeFor: z.union([quantityView, z.string()]).optional(),
  difference: quantityView.optional(),
  within: quantityView.optional().meta({ description: 'how far off the reading may be, half-width' }),
  guess: z.boolean(),
});

export const candidateView = z.object({
  familyId: z.uuid(),
  code: z.string(),
  name: z.string(),
  nominalRatio: z.number().optional(),
  probability: z.number().optional().meta({ description: 'left out while no family is named' }),
  reasons: z.array(reasonView),
});

export const threadView = z.object({ designation: z.string(), fit: word, offset: quantityView });
export const fastenerView = z.object({
  readingId: z.uuid(),
  threads: z.array(threadView),
  others: z.array(threadView).meta({ description: 'the nearest of those out of reach' }),
  ask: z.string().optional(),
});

export const coverView = z.object({
  readingId: z.uuid(),
  verdict: z.enum(['clear', 'close', 'short']),
  reason: z.string(),
  settledBy: z.string(),
});

export const ordinaryView = z.object({
  readingId: z.uuid(),
  kind: z.string(),
  sizes: z
    .array(z.object({ name: z.string(), madeFor: quantityView, offset: quantityView, word }))
    .meta({ description: 'sizes that parts are ordinarily made with, the nearest first' }),
  range: z.object({ low: quantityView, high: quantityView, word }).optional(),
});

export const studView = z.object({
  readingIds: z.array(z.uuid()),
  threads: z.array(
    z.object({
      designation: z.string(),
      word,
      offset: quantityView.optional().meta({ description: 'diameter past the limits of the thread' }),
      pitchOffset: quantityView.optional(),
    }),
  ),
  pitch: z.object({ value: quantityView, within: quantityView }).optional(),
  lacks: z.string().optional(),
  sentence: z.string(),
});

export const benchRatioView = z
  .object({
    readingIds: z.array(z.uuid()),
    ratio: z.number().optional(),
    low: z.number().optional(),
    high: z.number().optional(),
    inReach: z.array(z.number()).meta({ description: 'nominal ratios within the interval' }),
    sentence: z.string().optional(),
    lacks: z.string().optional(),
  })
  .meta({ description: 'by two arm lengths: an estimate, never set against a mark' });

/** One part in the hand, as the identification has it. */
export const partView = z
  .object({
    partId: z.uuid().optional().meta({ description: 'the first part of a build has none' }),
    name: z.string().optional(),
    arm: z.object({ armId: z.uuid(), sentence: z.string() }).optional(),
    readings: z.array(
      z.object({
        readingId: z.uuid(),
        within: quantityView.optional().meta({ description: 'how far off it may be, half-width' }),
        guess: z.boolean(),
        counts: z.enum(['yes', 'waits', 'left-out']),
        questionId: z.string().optional().meta({ description: 'the question it waits for' }),
        said: z.string().optional(),
      }),
    ),
    candidates: z.array(candidateView).meta({ description: 'likeliest first, twenty at the most' }),
    chances: z
      .enum(['told', 'held-back'])
      .meta({ description: 'held back everywhere while the headline names no family' }),
    noneOfThese: z.number().optional().meta({
      description: 'probability that it is in no line of the catalogue; left out while none is told',
    }),
    next: z.array(
      z.object({
        kind: z.string(),
        bits: z.number().meta({ description: 'expected information about the family' }),
        rightFirst: z.number().optional().meta({
          description: 'chance that the family then first is the right one; left out while none is told',
        }),
      }),
    ),
    tell: z.string().optional().meta({ description: 'what would tell most of the part' }),
    implied: z
      .array(
        z.object({
          what: z.enum(['stud', 'cover', 'guide']),
          probability: z.number(),
          together: z.number().meta({ description: 'of all families that mean the same' }),
          sentence: z.string(),
        }),
      )
      .meta({ description: 'what the family that is named means for what goes with it' }),
    fasteners: z.array(fastenerView),
    stud: studView.optional(),
    ordinary: z.array(ordinaryView),
    benchRatio: benchRatioView.optional(),
    cover: coverView
      .optional()
      .meta({ description: 'sideways room; needs a width, and how the cover is bolted' }),
  })
  .meta({ id: 'IdentifiedPart' });
