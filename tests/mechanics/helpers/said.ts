import { describe, expect, test } from 'vitest';
import type { AnyComputation } from '../../../server/mechanics/kit/computation.ts';
import { runner } from './runner.ts';

type Body = Readonly<Record<string, unknown>>;
/** What is entered, and a word or more of each sentence that is then said, in order. */
type SaidRow = readonly [when: string, body: Body, parts: readonly string[]];

function expectSaid(sentences: readonly string[], parts: readonly string[]): void {
  expect(sentences, parts.join(' | ')).toHaveLength(parts.length);
  parts.forEach((part, index) => {
    expect(sentences[index]).toContain(part);
  });
}

/** Which sentences an answer has with this input, and that it has no others. */
export function describeSaid(
  computation: AnyComputation,
  rows: { readonly assumes?: readonly SaidRow[]; readonly warns?: readonly SaidRow[] },
): void {
  const { run } = runner(computation);
  describe('what is said with it', () => {
    for (const [when, body, parts] of rows.assumes ?? []) {
      test(`assumed: ${when}`, () => {
        expectSaid(run(body).assumptions, parts);
      });
    }
    for (const [when, body, parts] of rows.warns ?? []) {
      test(`warned of: ${when}`, () => {
        expectSaid(run(body).cautions, parts);
      });
    }
  });
}
