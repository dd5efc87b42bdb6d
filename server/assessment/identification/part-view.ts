import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView } from '../../../shared/schemas/answer-parts.ts';
import type {
  BenchRatioDetail,
  CandidateDetail,
  HoleDetail,
  OrdinaryDetail,
  PartDetail,
  ReasonDetail,
  StudDetail,
} from '../../mechanics/assessment/part/detail.ts';

const word = z.enum(['agrees', 'cannot-tell', 'differs']);
const ifLength = (si: number | undefined) => (si === undefined ? undefined : inInches(si));

const reasonView = z.object({
  kind: z.string(),
  word: z.enum(['agrees', 'cannot-tell', 'differs', 'not-known']),
  reading: z.union([quantityView, z.string()]),
  madeFor: z.union([quantityView, z.string()]).optional(),
  difference: quantityView.optional(),
  within: quantityView.optional().meta({ description: 'how far off the reading may be, half-width' }),
  guess: z.boolean(),
});

const candidateView = z.object({
  familyId: z.uuid(),
  code: z.string(),
  name: z.string(),
  nominalRatio: z.number().optional(),
  probability: z.number(),
  reasons: z.array(reasonView),
});

const threadView = z.object({ designation: z.string(), fit: word, offset: quantityView });
const fastenerView = z.object({
  readingId: z.uuid(),
  threads: z.array(threadView),
  others: z.array(threadView).meta({ description: 'the nearest of those out of reach' }),
  ask: z.string().optional(),
});

const coverView = z.object({
  readingId: z.uuid(),
  verdict: z.enum(['clear', 'close', 'short']),
  reason: z.string(),
  settledBy: z.string(),
});

const ordinaryView = z.object({
  readingId: z.uuid(),
  kind: z.string(),
  sizes: z
    .array(z.object({ name: z.string(), madeFor: quantityView, offset: quantityView, word }))
    .meta({ description: 'sizes that parts are ordinarily made with, the nearest first' }),
  range: z.object({ low: quantityView, high: quantityView, word }).optional(),
});

const studView = z.object({
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

const benchRatioView = z
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
    noneOfThese: z.number().meta({ description: 'probability that it is in no line of the catalogue' }),
    next: z.array(
      z.object({
        kind: z.string(),
        bits: z.number().meta({ description: 'expected information about the family' }),
        rightFirst: z.number().meta({ description: 'chance that the family then first is the right one' }),
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
      .meta({ description: 'what the family that stands first means for what goes with it' }),
    fasteners: z.array(fastenerView),
    stud: studView.optional(),
    ordinary: z.array(ordinaryView),
    benchRatio: benchRatioView.optional(),
    cover: coverView
      .optional()
      .meta({ description: 'sideways room; needs a width, and how the cover is bolted' }),
  })
  .meta({ id: 'IdentifiedPart' });

const sizeOrWord = (value: number | string) => (typeof value === 'number' ? inInches(value) : value);

const showReason = (reason: ReasonDetail) =>
  answer(reasonView, {
    kind: reason.kind,
    word: reason.word,
    reading: sizeOrWord(reason.reading),
    madeFor: reason.madeFor === undefined ? undefined : sizeOrWord(reason.madeFor),
    difference: ifLength(reason.difference),
    within: ifLength(reason.within),
    guess: reason.guess === true,
  });

const showCandidate = ({ family, probability, reasons }: CandidateDetail) =>
  answer(candidateView, {
    familyId: family.id,
    code: family.code,
    name: family.name,
    nominalRatio: family.nominalRatio,
    probability,
    reasons: reasons.map(showReason),
  });

const showThread = ({ designation, fit, offset }: HoleDetail['threads'][number]) =>
  answer(threadView, { designation, fit, offset: inInches(offset) });

const showFastener = ({ entryId, threads, others, ask }: HoleDetail) =>
  answer(fastenerView, {
    readingId: entryId,
    threads: threads.map(showThread),
    others: others.map(showThread),
    ask,
  });

const showOrdinary = ({ entryId, kind, sizes, range }: OrdinaryDetail) =>
  answer(ordinaryView, {
    readingId: entryId,
    kind,
    sizes: sizes.map(({ name, madeFor, offset, word: said }) => ({
      name,
      madeFor: inInches(madeFor),
      offset: inInches(offset),
      word: said,
    })),
    range:
      range === undefined
        ? undefined
        : { low: inInches(range.low), high: inInches(range.high), word: range.word },
  });

const showStud = ({ entryIds, threads, pitch, lacks, sentence }: StudDetail) =>
  answer(studView, {
    readingIds: entryIds,
    threads: threads.map(({ designation, word: said, offset, pitchOffset }) => ({
      designation,
      word: said,
      offset: ifLength(offset),
      pitchOffset: ifLength(pitchOffset),
    })),
    pitch: pitch === undefined ? undefined : { value: inInches(pitch.value), within: inInches(pitch.within) },
    lacks,
    sentence,
  });

const showBenchRatio = (found: BenchRatioDetail) => {
  const known = found.lacks === undefined ? found : undefined;
  return answer(benchRatioView, {
    readingIds: found.entryIds,
    ratio: known?.ratio,
    low: known?.low,
    high: known?.high,
    inReach: known?.inReach ?? [],
    sentence: known?.sentence,
    lacks: found.lacks,
  });
};

/** What the assessment says of one part in the hand. */
export function showPart({
  about,
  arm,
  readings,
  ranking,
  holes,
  stud,
  ordinary,
  benchRatio,
  cover,
}: PartDetail) {
  return answer(partView, {
    partId: about.partId,
    name: about.name,
    arm,
    readings: readings.map(({ entryId, within, guess, counts, questionId, said }) => ({
      readingId: entryId,
      within: ifLength(within),
      guess,
      counts,
      questionId,
      said,
    })),
    candidates: (ranking?.candidates ?? []).map(showCandidate),
    noneOfThese: ranking?.noneOfThese.probability ?? 1,
    next: ranking?.offers ?? [],
    tell: ranking?.tell.sentence,
    implied: (ranking?.counted ?? 0) === 0 ? [] : (ranking?.implied ?? []),
    fasteners: holes.map(showFastener),
    stud: stud === undefined ? undefined : showStud(stud),
    ordinary: ordinary.map(showOrdinary),
    benchRatio: benchRatio === undefined ? undefined : showBenchRatio(benchRatio),
    cover:
      cover === undefined
        ? undefined
        : {
            readingId: cover.entryId,
            verdict: cover.word,
            reason: cover.reason,
            settledBy: cover.settledBy,
          },
  });
}
