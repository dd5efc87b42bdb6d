import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { read } from '../../mechanics/assessment/plain-build.ts';
import { curve, scan, scanned } from './scans.ts';

/* A short gap with room left: nobody runs it, and it can be read again once the desk allows that (desk playbook: any short they mean to run). */
const SHORT = scan(curve(0.076));
const answered = (evidence: Evidence, answer: string): Evidence => {
  const asked = assess(evidence).questions.find(({ code }) => code === 'gap-short');
  return {
    ...evidence,
    answers: [
      {
        id: 'answer',
        line: 9,
        questionId: asked?.id ?? '',
        code: 'gap-short',
        question: asked?.ask ?? '',
        answer,
      },
    ],
  };
};
const answersOf = (evidence: Evidence) =>
  assess(evidence)
    .questions.find(({ code }) => code === 'gap-short')
    ?.answers.map(({ code }) => code);
const wordsOf = (evidence: Evidence): string => {
  const { stop, questions } = assess(evidence);
  return [
    ...stop.flatMap(({ sentence, wayOut, wayOutAtBench }) => [sentence, wayOut, wayOutAtBench]),
    ...questions.flatMap(({ ask, test: todo }) => [ask, todo]),
  ].join(' ');
};

describe('a gap of .076 where .080 is wanted', () => {
  const evidence = scanned([SHORT]);

  test('is not said to have met, and another reading may be asked for', () => {
    expect(assess(evidence).stop[0]?.sentence).toMatch(
      /^Do not run it, and do not turn it yet: piston to valve/,
    );
    expect(wordsOf(evidence)).not.toMatch(/where the parts|have met\b(?!\.)|met, /);
    expect(wordsOf(evidence)).toMatch(/nothing has met/);
    expect(answersOf(evidence)).toEqual(['found', 'not-found', 'read-again']);
  });

  test('once that is answered the desk may lift it; lifted, it is read again by hand and not run', () => {
    const wanted = answered(evidence, 'read-again');
    const [stop] = assess(wanted).stop;
    expect(stop?.answered).toBe(true);
    expect(stop?.wayOut).toMatch(/desk first lifts the stop for that/);
    const lifted = assess({
      ...wanted,
      call: { ...wanted.call, stopsLifted: [{ stopId: stop?.id ?? '', entryId: SHORT.id }] },
    });
    expect(lifted.stop).toEqual([]);
    expect(lifted.next?.action).toBe('read-gap-again');
    expect(lifted.next?.sentence).toMatch(/^Have it turned by hand only, gently, and the gap read again\./);
    expect(lifted.notToRun.map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Do not run it: piston to valve on 1 intake is short/),
    ]);
  });
});

test('where nothing is left a shop looks first, and no other reading is offered', () => {
  for (const evidence of [
    scanned([scan(curve(-0.004))]),
    scanned([scan(curve(0))]),
    scanned([], { sheet: [read(1, 'intake', 'coil-bind', -0.004)] }),
  ]) {
    expect(assess(evidence).stop[0]?.sentence).toMatch(/^Do not turn it: /);
    expect(wordsOf(evidence)).toMatch(/qualified shop look whether the parts have met/);
    expect(answersOf(evidence)).toEqual(['found', 'not-found']);
  }
});

describe('a guess', () => {
  const guess = (inches: number) =>
    assess(scanned([], { sheet: [read(1, 'intake', 'piston-to-valve', inches, { tool: 'guess' })] }));

  test('that is short stops nothing, and nobody runs it before it is measured', () => {
    const { stop, notToRun, judgements } = guess(0.05);
    expect(stop).toEqual([]);
    expect(notToRun.map(({ sentence }) => sentence)).toEqual([
      'Do not run it before it is measured: piston to valve on 1 intake is guessed at .050 in, under .080 in.',
    ]);
    expect(judgements.map(({ sentence }) => sentence).join()).not.toMatch(/measured,/);
  });

  test('with room tells nothing; that nothing is left stops it', () => {
    expect(guess(0.12).notToRun).toEqual([]);
    expect(guess(0).stop.map(({ code }) => code)).toEqual(['gap-short']);
  });
});
