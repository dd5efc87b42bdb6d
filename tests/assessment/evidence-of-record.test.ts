import { describe, expect, it } from 'vitest';
import { evidenceOf } from '../../server/assessment/evidence.ts';
import { assess } from '../../server/mechanics/assessment/assess.ts';
import { buildOf } from '../mechanics/assessment/laws/builds.ts';
import { sentencesOf } from '../mechanics/assessment/laws/law.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';

const BUILDS = 150;

describe('the evidence out of a record', () => {
  it(`says what the record was made from, over ${BUILDS} generated builds`, () => {
    for (let seed = 1; seed <= BUILDS; seed += 1) {
      const evidence = buildOf(seed);
      const back = evidenceOf(recordOf(evidence), callOf(evidence));
      expect([seed, sentencesOf(assess(back))]).toEqual([seed, sentencesOf(assess(evidence))]);
    }
  });
});
