import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { quantityView } from '../../../shared/schemas/answer-parts.ts';
import type { Reason } from '../../mechanics/identify/types.ts';
import { partReadingView, showPartReading } from '../../records/part-readings/view.ts';
import type { CoverAnswer, HoleAnswer } from './fasteners.ts';
import type { PartIdentification, RankedFamily } from './identification.ts';

const reasonView = z.object({
  kind: z.string(),
  word: z.enum(['agrees', 'cannot-tell', 'differs', 'not-known']),
  reading: z.union([quantityView, z.string()]),
  madeFor: z.union([quantityView, z.string()]).optional(),
  difference: quantityView.optional(),
});

const candidateView = z.object({
  familyId: z.uuid(),
  code: z.string(),
  name: z.string(),
  nominalRatio: z.number().optional(),
  probability: z.number(),
  reasons: z.array(reasonView),
});

const fastenerView = z.object({
  readingId: z.uuid(),
  threads: z.array(z.object({ designation: z.string(), fit: z.enum(['agrees', 'cannot-tell']) })),
  ask: z.string().optional(),
});

const coverView = z.object({
  readingId: z.uuid(),
  verdict: z.enum(['clear', 'close', 'short']),
  reason: z.string(),
  settledBy: z.string(),
});

export const identificationView = z
  .object({
    readings: z.array(partReadingView),
    families: z.int().meta({ description: 'part families in the shop’s catalogue' }),
    candidates: z.array(candidateView).meta({ description: 'likeliest first, twenty at the most' }),
    noneOfThese: z.number().meta({ description: 'probability that it is in no line of the catalogue' }),
    next: z.array(
      z.object({
        kind: z.string(),
        bits: z.number().meta({ description: 'expected information about the family' }),
        rightFirst: z.number().meta({ description: 'chance that the family then first is the right one' }),
      }),
    ),
    fasteners: z.array(fastenerView),
    cover: coverView
      .optional()
      .meta({ description: 'sideways room; needs a width, and how the cover is bolted' }),
    questions: z.array(z.object({ code: z.string(), ask: z.string(), test: z.string() })),
  })
  .meta({ id: 'Identification' });

const inch = (value: number) => ({ value, unit: 'in' as const });
const sizeOrWord = (value: number | string) => (typeof value === 'number' ? inch(value) : value);

const showReason = (reason: Reason) =>
  answer(reasonView, {
    kind: reason.kind,
    word: reason.word,
    reading: sizeOrWord(reason.reading),
    madeFor: reason.madeFor === undefined ? undefined : sizeOrWord(reason.madeFor),
    difference: reason.difference === undefined ? undefined : inch(reason.difference),
  });

const showCandidate = ({ family, probability, reasons }: RankedFamily) =>
  answer(candidateView, {
    familyId: family.id,
    code: family.code,
    name: family.name,
    nominalRatio: family.nominalRatio,
    probability,
    reasons: reasons.map(showReason),
  });

const showFastener = ({ reading, threads, ask }: HoleAnswer) =>
  answer(fastenerView, { readingId: reading.id, threads, ask });

const showCover = ({ reading, verdict, reason, settledBy }: CoverAnswer) =>
  answer(coverView, { readingId: reading.id, verdict, reason, settledBy });

/** The rest of a long catalogue has no share worth sending. */
const MOST = 20;

export const showIdentification = (found: PartIdentification) =>
  answer(identificationView, {
    readings: found.readings.map(showPartReading),
    families: found.families,
    candidates: found.candidates.slice(0, MOST).map(showCandidate),
    noneOfThese: found.noneOfThese,
    next: found.offers,
    fasteners: found.fasteners.map(showFastener),
    cover: found.cover === undefined ? undefined : showCover(found.cover),
    questions: found.questions,
  });
