import { describe, expect, test } from 'vitest';
import { permuted } from '../../mechanics/assessment/laws/permuted.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { CHANCES } from './chances.ts';
import { DOUBTS } from './doubts.ts';
import { type Row, textOf } from './row.ts';
import { STAMPS } from './stamps.ts';
import { WHY_SHORT } from './why-short.ts';
import { WORD_WAITS } from './word-waits.ts';

const assess = assessAsTold('ratio-rows');

const ROWS: readonly Row[] = [...CHANCES, ...DOUBTS, ...STAMPS, ...WHY_SHORT, ...WORD_WAITS];

/** Words that nobody says over the phone. */
const NOT_PLAIN = /\breckoned\b|\bnought\b|\bparts (?:no|most|the causes)\b|taken for granted|undefined|NaN/;

function holds(row: Row, build: Row['build']): void {
  const assessment = assess(build);
  const { headlines, judgements, questions, explanations, notToRun, next } = assessment;
  const text = textOf(assessment);
  const headline = headlines.find(({ id }) => id === 'headline:ratio:1-intake')?.sentence ?? '';
  if (row.headline !== undefined) expect(headline).toMatch(row.headline);
  for (const [id, word] of Object.entries(row.words ?? {})) {
    const judged = judgements.find((each) => each.id === id);
    expect(judged, id).toBeDefined();
    expect(judged?.word, id).toBe(word);
  }
  for (const words of row.says ?? []) expect(text).toMatch(words);
  for (const words of [...(row.never ?? []), NOT_PLAIN]) expect(text).not.toMatch(words);
  for (const [code, words] of Object.entries(row.asks ?? {})) {
    const asked = questions.filter((each) => each.code === code).map(({ ask }) => ask);
    expect(asked, code).toEqual([expect.stringMatching(words)]);
  }
  const codes = questions.map(({ code }) => code);
  for (const code of row.asksNot ?? []) expect(codes).not.toContain(code);
  if (row.chances !== undefined) expect(explanations[0]?.chances).toBe(row.chances);
  if (row.notToRun === undefined) expect(notToRun).toEqual([]);
  else expect(notToRun.map(({ sentence }) => sentence).join('\n')).toMatch(row.notToRun);
  expect(next?.action.split(':')[0]).toMatch(
    typeof row.next === 'string' ? new RegExp(`^${row.next}$`) : row.next,
  );
  if (row.nextSays !== undefined) expect(next?.sentence).toMatch(row.nextSays);
}

describe('calls on the ratio, each in two orders of entry', () => {
  test.for(ROWS.map((row) => [row.said, row] as const))('%s', ([, row]) => {
    holds(row, row.build);
    holds(row, permuted(row.build, 5));
  });
});
