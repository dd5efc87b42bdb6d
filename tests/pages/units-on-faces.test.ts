import { describe, expect, it, test } from 'vitest';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { buildOf } from '../mechanics/assessment/laws/builds.ts';
import { facesOf, linesOf } from '../tools/call-faces.ts';
import { facesOfBuilds } from '../tools/generated-faces.ts';
import { tellsInches } from '../tools/inch-figures.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';

/*
 * Generated builds, all of whose entries were made in inches, on every face of a call that speaks millimetres; and
 * what is said of them in either. That the units change no judgement needs no source: the evidence is the same.
 */

const BUILDS = Array.from({ length: 60 }, (_, index) => buildOf(index + 1));

const inMetric = (evidence: Evidence): Evidence => ({
  ...evidence,
  call: { ...evidence.call, units: 'metric' },
});

describe('a call that speaks millimetres', () => {
  const lines = BUILDS.map(inMetric).flatMap((evidence) => {
    const call = callOf(evidence);
    return facesOf(recordOf(evidence), call.id).flatMap(({ name, html }) =>
      linesOf(html).map((line) => ({ name, line })),
    );
  });

  for (const face of new Set(lines.map(({ name }) => name)))
    it(`${face} tells no figure in inches but what was typed`, () => {
      const told = lines.filter(({ name, line }) => name === face && tellsInches(line));
      expect([...new Set(told.map(({ line }) => line))]).toEqual([]);
    });

  it('tells millimetres, and what was typed beside them', () => {
    expect(lines.some(({ line }) => /\d mm \(as typed \d?\.\d+ in\)/.test(line))).toBe(true);
    expect(lines.filter(({ line }) => / mm\b/.test(line)).length).toBeGreaterThan(1_000);
  });
});

test('the faces of the same builds in inches tell inches: the measure finds them', () => {
  const told = facesOfBuilds(5).flatMap(({ html }) => linesOf(html).filter(tellsInches));
  expect(told.length).toBeGreaterThan(100);
});

test('what is said differs in its words alone: the same figures, judgements, questions, stops and next step', () => {
  for (const evidence of BUILDS) {
    const [inch, metric] = [assess(evidence), assess(inMetric(evidence))];
    const bones = (of: typeof inch) => ({
      quantities: of.quantities.map(({ id, value, low, high, basis, restsOn }) => ({
        id,
        value,
        low,
        high,
        basis,
        restsOn,
      })),
      judgements: of.judgements.map(({ id, word, restsOn }) => ({ id, word, restsOn })),
      questions: of.questions.map(({ id, code, weight, answers, restsOn }) => ({
        id,
        code,
        weight,
        answers: answers.map(({ code: answer, value }) => ({ answer, value })),
        restsOn,
      })),
      stop: of.stop.map(({ id, code, restsOn }) => ({ id, code, restsOn })),
      headlines: of.headlines.map(({ id, step }) => ({ id, step })),
      missing: of.missing.map(({ id, step, must }) => ({ id, step, must })),
      next: of.next && { id: of.next.id, action: of.next.action, turns: of.next.turns },
      remaining: of.remaining,
    });
    expect(bones(metric)).toEqual(bones(inch));
  }
});
