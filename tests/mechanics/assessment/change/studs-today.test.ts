import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { LBF, LBF_PER_IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../plain-build.ts';

/*
 * Lobe .362, springs of 170 lb and 480 lb/in: 170 + 480 × .362 × 1.5 = 431 lb with the arms that are on, 448 lb with a
 * planned 1.6; up to 10 % more by the spring’s tolerance. 3/8 studs are commonly kept below 300 to 350 lb open: common
 * practice, no published source.
 */
const planned = (rockers: Evidence['rockers'], studSize: '3/8' | '7/16' = '3/8'): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  engine: { ...PLAIN.engine, studSize },
  rockers,
  springs: { ...PLAIN.springs, seatLoad: 170 * LBF, rate: 480 * LBF_PER_IN },
});
const studs = (evidence: Evidence) =>
  assess(evidence).headlines.find(({ id }) => id === 'headline:change:studs')?.sentence;
const barred = (evidence: Evidence) =>
  assess(evidence).notToRun.map(({ what, sentence }) => [what, sentence]);
const NOW = 'Do not run it with what is on now: the studs’ maker allows less than the springs open at.';

/** The question about the studs that is open, answered. */
function answering(evidence: Evidence, found: boolean): Evidence {
  const [open] = assess(evidence).questions.filter(
    ({ code, answered }) => code === 'stud-load' && answered === undefined,
  );
  const line = evidence.answers.length + 1;
  return {
    ...evidence,
    answers: [
      ...evidence.answers,
      {
        id: `said-${line}`,
        line,
        questionId: open?.id ?? '',
        code: 'stud-load',
        question: open?.ask ?? '',
        answer: found ? 'found' : 'not-found',
        found,
      },
    ],
  };
}

describe('what the studs bear today, beside what a planned ratio makes of it', () => {
  test('is said of the arms that are on, whichever of the two is more', () => {
    const up = planned({ soldAs: 1.5, planned: 1.6 });
    expect(studs(up)).toMatch(/^With the planned 1\.6 the spring may open at up to 495 lb/);
    expect(studs(up)).toMatch(/With what is on now, the 1\.5 they are sold as, at up to 475 lb\.$/);
    const down = planned({ soldAs: 1.6, planned: 1.5 });
    expect(studs(down)).toMatch(
      /^With what is on now, the 1\.6 they are sold as, the spring may open at up to 495/,
    );
    expect(studs(down)).toMatch(/With the planned 1\.5 at up to 475 lb\.$/);
  });

  test('of arms that nobody named it is told as what the card assumes', () => {
    expect(studs(planned({ planned: 1.6 }))).toMatch(
      /With what is on now, the 1\.5 the card assumes, at up to/,
    );
  });

  test('where the planned ones are too much, those that are on are asked by themselves, and are not run', () => {
    const once = answering(planned({ soldAs: 1.5, planned: 1.6 }), true);
    expect(barred(once)).not.toContainEqual(['run', NOW]);
    expect(barred(answering(once, true))).toContainEqual(['run', NOW]);
    expect(barred(answering(once, false))).not.toContainEqual(['run', NOW]);
  });

  test('where those that are on are the more, they are asked first, and the planned ones by themselves', () => {
    const once = answering(planned({ soldAs: 1.6, planned: 1.5 }), true);
    expect(barred(once)).toContainEqual(['run', NOW]);
    expect(barred(once).filter(([what]) => what === 'fit')).toEqual([]);
    expect(assess(once).next?.action).toBe('stud-load');
  });

  test('without a plan it is as it was, and a 7/16 stud is not spoken of', () => {
    expect(studs(planned({ soldAs: 1.5 }))).toMatch(/^The spring may open at up to 475 lb/);
    expect(studs(planned({ soldAs: 1.5, planned: 1.6 }, '7/16'))).toBeUndefined();
  });
});
