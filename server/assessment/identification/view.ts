import { z } from 'zod';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { quantityView } from '../../api/views.ts';
import type { Reason } from '../../mechanics/identify/types.ts';
import { entryShape, showEntry } from '../../records/corrections/view.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import type { PartIdentification, RankedFamily } from './identification.ts';

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

export function showPartReading(reading: PartReading) {
  const { size, word, ...rest } = reading;
  return {
    ...showEntry(rest),
    ...(size === undefined ? {} : { size: { ...size } }),
    ...(word === undefined ? {} : { word }),
  };
}

const reasonView = z.object({
  kind: z.string(),
  word: z.enum(['agrees', 'cannot-tell', 'differs', 'not-known']),
  reading: z.union([quantityView, z.string()]),
  madeFor: z.union([quantityView, z.string()]).optional(),
  difference: quantityView.optional(),
});

export const identificationView = z
  .object({
    readings: z.array(partReadingView),
    families: z.int().meta({ description: 'part families in the shop’s catalogue' }),
    candidates: z
      .array(
        z.object({
          familyId: z.uuid(),
          code: z.string(),
          name: z.string(),
          nominalRatio: z.number().optional(),
          probability: z.number(),
          reasons: z.array(reasonView),
        }),
      )
      .meta({ description: 'likeliest first, twenty at the most' }),
    noneOfThese: z.number().meta({ description: 'probability that it is in no line of the catalogue' }),
    next: z.array(
      z.object({
        kind: z.string(),
        bits: z.number().meta({ description: 'expected information about the family' }),
        rightFirst: z.number().meta({ description: 'chance that the family then first is the right one' }),
      }),
    ),
    fasteners: z.array(
      z.object({
        readingId: z.uuid(),
        threads: z.array(z.object({ designation: z.string(), fit: z.enum(['agrees', 'cannot-tell']) })),
        ask: z.string().optional(),
      }),
    ),
    cover: z
      .object({
        readingId: z.uuid(),
        verdict: z.enum(['clear', 'close', 'short']),
        reason: z.string(),
        settledBy: z.string(),
      })
      .optional()
      .meta({ description: 'sideways room; needs a width, and how the cover is bolted' }),
    questions: z.array(z.object({ code: z.string(), ask: z.string(), test: z.string() })),
  })
  .meta({ id: 'Identification' });

const sizeOrWord = (value: number | string) =>
  typeof value === 'number' ? { value, unit: 'in' as const } : value;

function showReason({ kind, word, reading, madeFor, difference }: Reason) {
  return {
    kind,
    word,
    reading: sizeOrWord(reading),
    ...(madeFor === undefined ? {} : { madeFor: sizeOrWord(madeFor) }),
    ...(difference === undefined ? {} : { difference: sizeOrWord(difference) }),
  };
}

function showCandidate({ family, probability, reasons }: RankedFamily) {
  return {
    familyId: family.id,
    code: family.code,
    name: family.name,
    ...(family.nominalRatio === undefined ? {} : { nominalRatio: family.nominalRatio }),
    probability,
    reasons: reasons.map(showReason),
  };
}

/** The rest of a long catalogue has no share worth sending. */
const MOST = 20;

export function showIdentification(found: PartIdentification) {
  const { cover } = found;
  return {
    readings: found.readings.map(showPartReading),
    families: found.families,
    candidates: found.candidates.slice(0, MOST).map(showCandidate),
    noneOfThese: found.noneOfThese,
    next: found.offers.map((offer) => ({ ...offer })),
    fasteners: found.fasteners.map(({ reading, threads, ask }) => ({
      readingId: reading.id,
      threads: threads.map((thread) => ({ ...thread })),
      ...(ask === undefined ? {} : { ask }),
    })),
    ...(cover === undefined
      ? {}
      : {
          cover: {
            readingId: cover.reading.id,
            verdict: cover.verdict,
            reason: cover.reason,
            settledBy: cover.settledBy,
          },
        }),
    questions: found.questions.map((question) => ({ ...question })),
  };
}
