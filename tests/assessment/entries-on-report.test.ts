import { describe, expect, it } from 'vitest';
import { loggedAnswer } from '../../server/call/answered-text.ts';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import type { AssessedQuestion } from '../../server/mechanics/assessment/assessment.ts';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { buildOf } from '../mechanics/assessment/laws/builds.ts';
import { facesOf, linesOf } from '../tools/call-faces.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';

/*
 * No entry on record is lacking from the report. The records have no events, so that its tape is empty: what is found
 * stands in its parts.
 */

const BUILDS = 40;

const plain = (text: string): string =>
  text
    .replace(/[\s\u00a0]+/g, ' ')
    .replace(/\b0\./g, '.')
    .replace(/ in$/, '')
    .trim();

interface Entry {
  readonly what: string;
  readonly text: string;
  /** An answer that counts is told in the words that were offered for it: its code is nothing to read. */
  readonly offered?: string | undefined;
}

/** The words that were offered for what the entry `id` answers. */
const offeredFor = (questions: readonly AssessedQuestion[], id: string, answer: string): string | undefined =>
  questions.find(({ answered }) => answered?.entryId === id)?.answers.find(({ code }) => code === answer)
    ?.label;

/** Generated evidence has what was replaced without what replaced it: such an entry is no record. */
const isWhole =
  (all: readonly { readonly id: string }[]) =>
  ({ replacedBy }: { readonly replacedBy: string | undefined }): boolean =>
    replacedBy === undefined || all.some(({ id }) => id === replacedBy);

function entriesOf(record: BuildRecord, questions: readonly AssessedQuestion[]): Entry[] {
  const { readings, sheetReadings, tipMarks, partReadings, answers, setUps, arms, notes } = record;
  return [
    ...readings.map(({ kind, peak }) => ({ what: kind, text: peak.readAs })),
    ...sheetReadings
      .filter(isWhole(sheetReadings))
      .map(({ kind, reading }) => ({ what: `sheet ${kind}`, text: reading.readAs })),
    ...tipMarks.map(({ readAs }) => ({ what: 'tip mark', text: readAs })),
    ...partReadings.map(({ kind, readAs }) => ({ what: `part ${kind}`, text: readAs })),
    ...answers.map(({ id, answer, code, questionId }) => ({
      what: `answer to ${code}`,
      text: answer,
      // Of a question that is not asked any more, as the log tells it.
      offered: offeredFor(questions, id, answer) ?? loggedAnswer(answer, questionId, code),
    })),
    ...answers.flatMap(({ value }) => (value === undefined ? [] : [{ what: 'amount', text: value.readAs }])),
    ...setUps.flatMap(({ statements }) =>
      statements.map(({ reason }) => ({ what: 'put right', text: reason })),
    ),
    ...setUps.flatMap(({ method: { lashSetting } }) =>
      lashSetting === undefined ? [] : [{ what: 'lash left in', text: lashSetting.readAs }],
    ),
    ...arms.flatMap(({ ratioStamp, otherNumber, boxLabel }) =>
      [ratioStamp, otherNumber, boxLabel].map((text) => ({ what: 'mark', text })),
    ),
    ...notes.map(({ body }) => ({ what: 'note', text: body })),
  ].filter(({ text }) => text !== '');
}

describe(`the report of ${BUILDS} generated builds`, () => {
  it('has every entry of the record', () => {
    let looked = 0;
    const lacking = Array.from({ length: BUILDS }, (_, index) => index + 1).flatMap((seed) => {
      const evidence = buildOf(seed);
      const record = recordOf(evidence);
      const report = facesOf(record, callOf(evidence).id).find(({ name }) => name === 'report');
      const text = plain(linesOf(report?.html ?? '').join(' '));
      const entries = entriesOf(record, assess(evidence).questions);
      looked += entries.length;
      return entries
        .filter(
          (entry) => ![entry.text, entry.offered ?? entry.text].some((words) => text.includes(plain(words))),
        )
        .map(({ what, text: entered }) => `build ${seed}, ${what}: ${entered}`);
    });
    expect(looked).toBeGreaterThan(500);
    expect(lacking).toEqual([]);
  });
});
