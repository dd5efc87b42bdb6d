import { breathsOf } from '../../../server/call/headline.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';

/** Everything that the assessment says, as a page may have it. */
export function saidBy({
  judgements,
  headlines,
  stop,
  notToRun,
  next,
  missing,
  needs,
  questions,
  explanations,
  details,
}: Assessment) {
  return [
    ...[...judgements, ...headlines, ...missing].map(({ sentence }) => sentence),
    // The first lines of a page have what follows the answer in a line of its own.
    ...headlines.flatMap(({ sentence }) => Object.values(breathsOf(sentence))),
    ...[...stop, ...notToRun].flatMap(({ sentence, wayOut, wayOutAtBench = '' }) => [
      sentence,
      wayOut,
      wayOutAtBench,
    ]),
    ...(next === undefined ? [] : [next.sentence, next.sentenceAtBench ?? '', next.reason]),
    ...needs.map(({ what }) => what),
    ...questions.flatMap(({ ask, size, test, testAtBench, answers }) => [
      ask,
      size ?? '',
      test,
      testAtBench ?? '',
      ...answers.flatMap(({ label, changes }) => [label, changes]),
    ]),
    ...explanations.flatMap(({ summary, refused, result }) => [
      summary,
      refused ?? '',
      ...(result?.explanations ?? []).map(({ needs: needed }) => needed),
    ]),
    ...details.setUps.flatMap(({ assumptions, cautions, lacks, passes }) => [
      ...assumptions,
      ...cautions,
      ...lacks,
      ...passes.map(({ aside }) => aside?.sentence ?? ''),
    ]),
    ...details.change.flatMap(({ assumptions, cautions, adjusters, checks, gaps }) => [
      ...assumptions,
      ...checks.map(({ sentence }) => sentence),
      ...cautions,
      adjusters,
      ...gaps.flatMap(({ because, lacks }) => [...because, ...lacks.map(({ said }) => said)]),
    ]),
    ...details.noise.facts.map(({ text }) => text),
    ...details.sheet.sides.flatMap(({ odd }) => odd.map(({ swap }) => swap ?? '')),
    ...details.parts.flatMap(({ holes, cover, arm, stud, benchRatio, ranking, readings }) => [
      ...holes.flatMap(({ said, ask, cautions }) => [said, ask ?? '', ...cautions]),
      ...(cover === undefined ? [] : [cover.reason, cover.settledBy]),
      arm?.sentence ?? '',
      stud?.sentence ?? '',
      benchRatio?.lacks ?? benchRatio?.sentence ?? '',
      ...(ranking?.implied ?? []).map(({ sentence }) => sentence),
      ...(ranking?.candidates ?? []).flatMap(({ reasons }) =>
        reasons.map(({ word, said }) => `${word.replace('-', ' ')}: ${said}`),
      ),
      ...readings.map(({ said }) => said ?? ''),
    ]),
  ].filter((text) => text !== '');
}
