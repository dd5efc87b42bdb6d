import { answer } from '../../../shared/schemas/answer.ts';
import { inInches } from '../../../shared/schemas/answer-parts.ts';
import type {
  BenchRatioDetail,
  CandidateDetail,
  HoleDetail,
  OrdinaryDetail,
  PartDetail,
  ReasonDetail,
  StudDetail,
} from '../../mechanics/assessment/part/detail.ts';
import {
  benchRatioView,
  candidateView,
  fastenerView,
  ordinaryView,
  partView,
  reasonView,
  studView,
  threadView,
} from './part-schema.ts';

const ifLength = (si: number | undefined) => (si === undefined ? undefined : inInches(si));

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

const showCandidate = ({ family, chance, reasons }: CandidateDetail) =>
  answer(candidateView, {
    familyId: family.id,
    code: family.code,
    name: family.name,
    nominalRatio: family.nominalRatio,
    probability: chance?.probability,
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
    chances: ranking === undefined || ranking.told ? 'told' : 'held-back',
    noneOfThese: ranking === undefined ? 1 : ranking.noneOfThese?.probability,
    next: (ranking?.offers ?? []).map(({ kind, bits, rightFirst }) => ({
      kind,
      bits,
      rightFirst: ranking?.told === true ? rightFirst : undefined,
    })),
    tell: ranking?.tell.sentence,
    implied: ranking?.implied ?? [],
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
