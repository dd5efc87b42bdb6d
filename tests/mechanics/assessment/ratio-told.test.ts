import { describe, expect, test } from 'vitest';
import type { Evidence, SetUpEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { buildOf, cleanSetUp, IN, lobe, nothingKnown, passesOf, stamped } from './plain.ts';

const assess = assessAsTold('ratio-told');

const headlineOf = (evidence: Evidence) =>
  assess(evidence).headlines.find(({ id }) => id === 'headline:ratio:1-intake')?.sentence ?? '';
const againstMark = (evidence: Evidence) =>
  assess(evidence).judgements.find(({ against }) => against.to === 'mark');
const withSetUp = (change: Partial<SetUpEvidence>) =>
  buildOf([0.557, 0.557, 0.5575], { setUps: [{ ...cleanSetUp, ...change }] });

describe('a ratio against the mark', () => {
  test('mark 1.6, card .348 and .339, valve .557: 1.601 as read, weighed 1.602, between 1.582 and 1.624: agrees', () => {
    // One reading, the plunger not said. What is weighed: the first worked case of the inference, its interval good to
    // ±.001. What is told is the reading: .557/.348 = 1.6006, by hand.
    const build = buildOf([0.557], { setUps: [{ ...cleanSetUp, alignment: 'not-said' }] });
    const [explanation] = assess(build).explanations;
    expect(explanation?.result?.ratio.median).toBeCloseTo(1.602, 2);
    expect(Math.abs((explanation?.result?.ratio.interval95[0] ?? 0) - 1.582)).toBeLessThanOrEqual(0.001);
    expect(Math.abs((explanation?.result?.ratio.interval95[1] ?? 0) - 1.624)).toBeLessThanOrEqual(0.001);
    expect(againstMark(build)?.word).toBe('agrees');
    expect(headlineOf(build)).toBe(
      '1 intake: 1.601 ± .017 as read from one pass: agrees with the 1.6 stamped on it. Two more passes of the valve lift show whether it repeats.',
    );
    expect(explanation?.summary).toMatch(
      /^Weighed with .*, 1\.602, between 1\.58\d and 1\.624: a 1\.6, about 95 %\.$/,
    );
  });

  test('3.5 % over is said to be ordinary for an arm made with room for flex, and never called another ratio', () => {
    // 2 to 4.5 % over is ordinary: trade-practice 3, ratio tolerance.
    const build = buildOf([], {
      card: { assumedRatio: 1.6, intake: lobe(0.352), exhaust: lobe(0.352) },
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes: [
        ...passesOf('lobe-lift', [0.352, 0.3515, 0.352]),
        ...passesOf('valve-lift', [0.5825, 0.583, 0.5825], { counted: true, zeroReturn: 0 }),
      ],
    });
    expect(headlineOf(build)).toContain(
      ': ordinary for an arm made with room for flex. Use 1.656 for every clearance.',
    );
    expect(headlineOf(build)).toContain('the 1.6 stamped on it');
    expect(headlineOf(build)).not.toContain('1.65,');
  });

  test('without a mark a name is given with its chance alone, and no word', () => {
    const build = buildOf([0.557, 0.557], { arms: [stamped('16')] });
    const { judgements } = assess(build);
    expect(headlineOf(build)).toMatch(/: a 1\.6, about \d+ %/);
    expect(judgements.filter(({ against }) => against.to === 'nominal').map(({ word }) => word)).toEqual([
      undefined,
    ]);
  });

  test('what it is sold as takes the place of the mark', () => {
    const build = buildOf([0.557, 0.557], { arms: [stamped('')], rockers: { soldAs: 1.6 } });
    expect(headlineOf(build)).toContain('agrees with the 1.6 it is sold as');
  });
});

describe('nothing against its own conditions', () => {
  const CASES: readonly (readonly [string, Partial<SetUpEvidence>, string])[] = [
    ['lash left in', { lash: 'set' }, 'zero lash'],
    ['lash left in, its setting known', { lash: 'set', lashSetting: 0.016 * IN }, 'zero lash'],
    ['plunger leaning', { alignment: 'leaning' }, 'parallel to the stem'],
    ['spring not said', { spring: 'not-said' }, 'which spring'],
    ['lifter not said', { lifter: 'not-said' }, 'which lifter'],
    ['lash not said', { lash: 'not-said' }, 'whether the lash'],
    ['a running spring', { spring: 'running' }, 'a light spring'],
  ];

  test.for(CASES)('%s: no word, and what comes first', ([, change, first]) => {
    const judgement = againstMark(withSetUp(change));
    expect(judgement?.word).toBeUndefined();
    expect(judgement?.sentence).toMatch(/(^N|, n)ot yet set against the 1\.6 stamped on it\. First: /);
    expect(judgement?.sentence).toContain(first);
  });

  test('passes further apart than they can be', () => {
    const judgement = againstMark(buildOf([0.557, 0.563, 0.55]));
    expect(judgement?.word).toBeUndefined();
    expect(judgement?.sentence).toContain('these lie .013 in apart');
  });

  test('a hydraulic lifter that sinks', () => {
    // .528 .523 .517: the sinking passes of inference.md 7, here on a light spring.
    const build = {
      ...withSetUp({ lifter: 'hydraulic' }),
      passes: passesOf('valve-lift', [0.528, 0.523, 0.517]),
    };
    const judgement = againstMark(build);
    expect(judgement?.word).toBeUndefined();
    expect(judgement?.sentence).toContain('don’t sink');
    expect(assess(build).quantities.find(({ id }) => id.startsWith('set-up-ratio'))?.value).toBeUndefined();
  });

  const besideLight = (lift: number) => {
    const running = { ...cleanSetUp, id: 'set-up-2', number: 2, spring: 'running' as const };
    const build = buildOf([], {
      engine: { mounting: 'shaft' },
      setUps: [cleanSetUp, running],
      passes: [
        ...passesOf('valve-lift', [0.557, 0.557]),
        ...passesOf('valve-lift', [lift, lift], { setUpId: 'set-up-2' }),
      ],
    });
    return assess(build).judgements.find(({ against }) => against.to === 'usual-deflection');
  };

  test('a running ratio meets no mark; beside a light one it is the deflection, with its usual band', () => {
    const told = besideLight(0.545);
    // .557 − .545 = .012; .012/.348 = .034; .005 to .020 on a shaft: trade-practice 2.5.
    expect(told?.sentence).toContain('takes .012 in');
    expect(told?.sentence).toContain('.034 of ratio');
    expect(told?.sentence).toContain('.005 to .020 in is usual on a shaft');
    expect(told?.word).toBeUndefined();
    expect(told?.sentence).not.toContain('than usual');
    expect(besideLight(0.525)?.sentence).toContain('more than usual: ');
    expect(besideLight(0.5565)?.sentence).toContain('less than usual: ');
  });

  test('a running lift above the light one is no loss; far above it the springs are asked about', () => {
    expect(besideLight(0.5575)?.sentence).toMatch(
      /takes nothing off the lift .*; \.005 to \.020 in is usual on a shaft/,
    );
    expect(besideLight(0.565)?.sentence).toContain('Could the two springs be noted the wrong way round?');
  });
});

describe('a pass that stands apart by a turn', () => {
  test('is named and not averaged, and a person has to strike it out', () => {
    const { details, judgements } = assess(buildOf([0.557, 0.457, 0.558]));
    const [setUp] = details.setUps;
    expect(setUp?.passes.map(({ aside }) => aside?.code)).toEqual([undefined, 'turn-apart', undefined]);
    expect((setUp?.lift?.read ?? 0) / IN).toBeCloseTo(0.5575, 9);
    expect(judgements[0]?.word).toBeUndefined();
    expect(judgements[0]?.sentence).toContain(
      'pass 2 entered again or struck out: it reads .457 in, one turn of the dial under',
    );
  });

  test('of two neither is averaged', () => {
    const { quantities } = assess(buildOf([0.557, 0.457]));
    const ratio = quantities.find(({ id }) => id.startsWith('set-up-ratio'));
    expect(ratio?.value).toBeUndefined();
    expect(ratio?.lacks.join()).toContain(
      'pass 1, .557 in, and pass 2, .457 in, are one turn of the dial apart',
    );
  });

  test('a count that was looked at and does not fit is said not to fit', () => {
    const passes = passesOf('valve-lift', [0.457, 0.457, 0.4575], { counted: true });
    const { questions } = assess(buildOf([], { passes }));
    expect(questions.map(({ code }) => code)).toContain('count-does-not-fit');
    expect(questions.map(({ code }) => code)).not.toContain('turn-miscounted');
  });
});

describe('what is said late counts', () => {
  const bare = {
    ...nothingKnown,
    setUps: [{ ...cleanSetUp, armId: 'arm-a' }],
    passes: passesOf('valve-lift', [0.557, 0.557]),
  };
  const answer = (code: string, text: string) => ({
    id: `answer-${code}`,
    line: 99,
    code,
    question: code,
    answer: text,
    setUpId: cleanSetUp.id,
  });

  test('card and mark judge readings that were there before', () => {
    const late = { ...bare, arms: [stamped('1.6')], card: { intake: lobe(0.348), exhaust: lobe(0.339) } };
    expect(againstMark(late)?.word).toBe('agrees');
  });

  test('state given as the answer to a question judges the readings as if it had been said with them', () => {
    const unsaid = withSetUp({ spring: 'not-said', lifter: 'not-said', lash: 'not-said' });
    const answers = [
      answer('spring-not-said', 'light'),
      answer('lifter-not-said', 'solid'),
      answer('lash-not-said', 'zero'),
    ];
    expect(againstMark({ ...unsaid, answers })?.sentence).toBe(againstMark(withSetUp({}))?.sentence);
  });

  test('the arm that was named late is the arm of the readings before, while no other sat there', () => {
    const setUps = [cleanSetUp].map(({ armId: _, ...setUp }) => setUp);
    const build = buildOf([0.557, 0.557], { setUps });
    expect(againstMark(build)?.word).toBe('agrees');
    expect(assess(build).details.setUps[0]?.armTaken).toBe(true);
    const moved = {
      ...build,
      seats: [...build.seats, { cylinder: 1, valve: 'intake' as const, armId: 'arm-b' }],
    };
    expect(againstMark(moved)).toBeUndefined();
  });
});

describe('explanations never vanish', () => {
  test('sixty passes are explained by the last forty', () => {
    const lifts = Array.from({ length: 60 }, (_, index) => 0.557 + (index % 3) * 0.0005);
    const [explanation] = assess(buildOf(lifts)).explanations;
    expect(explanation?.result).toBeDefined();
    expect(explanation?.restsOn.length).toBe(40);
  });

  test('the same arm on another valve with its lobe counted does not stop the inference', () => {
    const there = { ...cleanSetUp, id: 'set-up-2', number: 2, cylinder: 2, lobeSource: 'indicator' as const };
    const build = buildOf([], {
      setUps: [cleanSetUp, there],
      passes: [
        ...passesOf('valve-lift', [0.557, 0.557]),
        ...passesOf('valve-lift', [0.558], { setUpId: 'set-up-2' }),
        ...passesOf('lobe-lift', [0.348, 0.348], { setUpId: 'set-up-2', counted: true }),
      ],
    });
    expect(assess(build).explanations.map(({ result }) => result === undefined)).toEqual([false, false]);
  });

  test('a figure that no lift can be is refused with the fault and the way out', () => {
    const [explanation] = assess(buildOf([300, 300])).explanations;
    expect(explanation?.result).toBeUndefined();
    expect(explanation?.refused).toBe(
      'These readings cannot be weighed (300 came: a lift must be above 0, at most 100): enter that one again, or strike it out with the reason.',
    );
  });
});
