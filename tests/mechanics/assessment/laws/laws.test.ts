import { beforeAll, describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { wordsOf } from '../../../../server/mechanics/assessment/words-of.ts';
import { LAWS } from './all.ts';
import { buildOf } from './builds.ts';
import { changeIsToldAsItIs } from './change-told.ts';
import { type Assessed, isAgainstArm } from './law.ts';

/** How many builds are generated; `LAW_BUILDS=5000 npm test -- laws` for more. */
const BUILDS = Number(process.env.LAW_BUILDS ?? 400);
const FIRST = Number(process.env.LAW_FIRST ?? 1);

let all: Assessed[];

beforeAll(() => {
  all = Array.from({ length: BUILDS }, (_, index) => {
    const seed = FIRST + index;
    const evidence = buildOf(seed);
    return { seed, evidence, assessment: assess(evidence) };
  });
}, 600_000);

describe(`the laws of the assessment, over ${BUILDS} generated builds`, () => {
  test.for(Object.entries(LAWS))('%s', { timeout: 600_000 }, ([, law]) => {
    const broken = all.flatMap((assessed) =>
      law(assessed).map((fault) => `build ${assessed.seed}: ${fault}`),
    );
    expect(broken.slice(0, 20)).toEqual([]);
  });

  test('every verdict word of a judgement or table is among those that a face may show', () => {
    const broken = all.flatMap(({ seed, assessment }) => {
      const words = new Map(wordsOf(assessment).map(({ id, word }) => [id, word]));
      return assessment.judgements
        .filter(({ id, word }) => word !== undefined && words.get(id) !== word)
        .map(({ id, word }) => `build ${seed}: ${id} says ${word}, elsewhere ${words.get(id)}`);
    });
    expect(broken).toEqual([]);
  });

  test('the builds reach what the laws are about', () => {
    const share = (has: (assessed: Assessed) => boolean) => all.filter(has).length / all.length;
    expect(share(({ assessment }) => assessment.explanations.length > 0)).toBeGreaterThan(0.5);
    expect(share(({ assessment }) => assessment.stop.length > 0)).toBeGreaterThan(0.15);
    expect(share(({ assessment }) => assessment.stop.length === 0)).toBeGreaterThan(0.3);
    const worded = ({ assessment }: Assessed) =>
      assessment.judgements.some((each) => isAgainstArm(each) && each.word !== undefined);
    expect(share(worded)).toBeGreaterThan(0.08);
    const gaps = ({ assessment }: Assessed) =>
      assessment.judgements.some(({ against }) => against.to === 'limit');
    expect(share(gaps)).toBeGreaterThan(0.2);
    expect(share(({ evidence }) => evidence.rockers.planned !== undefined)).toBeGreaterThan(0.15);
    expect(share(({ evidence }) => evidence.answers.length > 0)).toBeGreaterThan(0.1);
    expect(share(({ assessment }) => assessment.details.noise.facts.length > 2)).toBeGreaterThan(0.08);
  });
});

describe(`what a ratio does, over ${BUILDS} generated builds`, () => {
  changeIsToldAsItIs(() => all);
});
