import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import { permuted } from '../mechanics/assessment/laws/permuted.ts';
import { assessAsTold } from '../tools/told/assess-as-told.ts';
import type { RatioCall } from './ratio-call.ts';
import { RATIO_CALLS } from './ratio-calls.ts';

const assess = assessAsTold('ratio-calls');

/** Orders of entry: as it was told, and twice in another order. */
const ORDERS = [undefined, 3, 11] as const;

/** Everything that is said of the ratio and calculated from it. */
function saidOf({ headlines, judgements, explanations, next, details, missing }: Assessment): string {
  return [
    ...[...headlines, ...judgements, ...missing].map(({ sentence }) => sentence),
    ...explanations.flatMap(({ summary, result }) => [
      summary,
      result?.summary ?? '',
      ...(result?.explanations ?? []).map(({ needs }) => needs),
    ]),
    ...(next === undefined ? [] : [next.sentence, next.reason]),
    ...details.change.flatMap(({ before, after, assumptions }) => [
      before?.said ?? '',
      after?.said ?? '',
      ...assumptions,
    ]),
  ].join('\n');
}

function holds(call: RatioCall, assessment: Assessment): void {
  const { headlines, judgements, questions, explanations, next } = assessment;
  const headline = headlines.find(({ id }) => id === 'headline:ratio:1-intake')?.sentence ?? '';
  for (const part of call.headline) expect(headline).toContain(part);
  const beside = judgements.map(({ sentence }) => sentence).join('\n');
  for (const part of call.told ?? []) expect(beside).toContain(part);
  const mark = judgements.find(({ against }) => against.to === 'mark');
  expect(mark?.word).toBe(call.word);
  // Law 6: verdict and explanation agree.
  expect(explanations[0]?.result?.againstMark).toBe(call.word);
  const said = saidOf(assessment);
  if (call.also !== undefined) expect(said).toMatch(call.also);
  if (call.never !== undefined) expect(said).not.toMatch(call.never);
  expect(said).not.toMatch(/undefined|NaN|\.\.$|\?\./m);
  for (const [code, words] of call.asked ?? [])
    expect(
      questions
        .filter((each) => each.code === code)
        .map(({ ask }) => ask)
        .join(),
    ).toContain(words);
  const codes = questions.map(({ code }) => code);
  for (const code of call.notAsked ?? []) expect(codes).not.toContain(code);
  const action = next?.action.split(':')[0] ?? '';
  if (typeof call.next === 'string') expect(action).toBe(call.next);
  else expect(action).toMatch(call.next);
}

describe('calls about a ratio, each in three orders of entry', () => {
  test.for(RATIO_CALLS.map((call) => [call.said, call] as const))('%s', ([, call]) => {
    for (const order of ORDERS)
      holds(call, assess(order === undefined ? call.build : permuted(call.build, order)));
  });

  test('no two calls are the same', () => {
    expect(new Set(RATIO_CALLS.map(({ build }) => JSON.stringify(build))).size).toBe(RATIO_CALLS.length);
  });
});
