import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { forBench } from '../../../server/mechanics/assessment/for-bench.ts';
import { goalOf, planOf } from '../../../shared/schemas/goals.ts';
import { GOALS } from '../../../shared/schemas/words.ts';
import { buildOf, cleanSetUp, lobe, nothingKnown, passesOf, stamped } from './plain.ts';
import { read } from './plain-build.ts';

const nextOf = (evidence: Evidence) => assess(evidence).next;
const withCall = (call: Partial<Evidence['call']>): Evidence => ({
  ...nothingKnown,
  call: { ...nothingKnown.call, ...call },
});

describe('the one thing that is worth most now', () => {
  test('the first question of the call goes before all others', () => {
    expect(nextOf(withCall({ engineState: 'not-asked' }))).toMatchObject({ step: 'triage', turns: false });
    expect(nextOf(withCall({ contact: 'not-asked' }))?.sentence).toContain('hit, bent');
  });

  test('under a hold it is what the hold needs, and nobody turns it', () => {
    const held = {
      ...buildOf([0.535]),
      call: { ...nothingKnown.call, hold: { reason: 'a pushrod came out bent' } },
    };
    const { next, headlines, questions } = assess(held);
    expect(next).toMatchObject({ action: 'under-held', turns: false });
    expect(next?.reason).toContain('a pushrod came out bent');
    expect(headlines[0]?.sentence).toContain('No reading is taken while the stop stands.');
    expect(
      questions
        .map(({ test: settles }) => settles)
        .filter((settles) => /^(Take|Turn|Set|Read)/.test(settles)),
    ).toEqual([]);
  });

  test('something that hit is a stop without a hold', () => {
    expect(nextOf(withCall({ contact: 'something' }))).toMatchObject({
      action: 'under-contact',
      turns: false,
    });
  });

  test('then what the goal lacks, in the order of its plan', () => {
    expect(nextOf(withCall({ goal: 'identify' }))).toMatchObject({
      step: 'identify',
      action: 'hole',
      turns: false,
    });
    expect(nextOf(withCall({ goal: 'cam-timing' }))).toMatchObject({ step: 'timing' });
    expect(nextOf(withCall({ goal: 'noise-or-failure' }))).toMatchObject({
      step: 'noise',
      action: 'noise-signs',
      turns: false,
    });
    const [first] = assess(withCall({ goal: 'clearances-after-a-change' })).missing;
    expect(first).toMatchObject({ step: 'cam', must: true });
    // A change is calculated with what is planned: that is asked for before its consequences.
    const lacks = assess(withCall({ goal: 'choose-ratio' })).missing.map(({ id }) => id);
    expect(lacks.indexOf('missing:parts:planned')).toBeLessThan(lacks.indexOf('missing:consequences:ratio'));
    expect(lacks).toContain('missing:parts:planned');
  });

  const turnMissed = buildOf([0.457, 0.457, 0.4575]);

  test('then the test of a strong doubt', () => {
    expect(nextOf(turnMissed)).toMatchObject({ action: 'turn-miscounted', step: 'ratio', turns: true });
    expect(nextOf(turnMissed)?.sentence).toContain('Read the small hand');
  });

  test('a doubt that was found to be so wants the reading entered again', () => {
    const answers = [
      {
        id: 'a',
        line: 9,
        code: 'turn-miscounted',
        question: 'turn-miscounted',
        answer: 'found',
        setUpId: cleanSetUp.id,
      },
    ];
    expect(nextOf({ ...turnMissed, answers })).toMatchObject({ turns: false });
    // By the name that the headline has for it.
    expect(nextOf({ ...turnMissed, answers })?.sentence).toContain(
      'Enter passes 1, 2 and 3 of 1 intake again, or strike them out with the reason',
    );
    expect(assess({ ...turnMissed, answers }).headlines[0]?.sentence).toContain(
      'passes 1, 2 and 3 entered again',
    );
  });

  test('then the reading that tells most, and it names the valve', () => {
    // 3 % under the mark: it is read again before anything is swapped (common practice, no published source).
    const open = buildOf([], {
      card: { assumedRatio: 1.6, intake: lobe(0.348), exhaust: lobe(0.348) },
      passes: passesOf('valve-lift', [0.54, 0.5405, 0.54], { counted: true }),
    });
    expect(nextOf(open)).toMatchObject({ step: 'ratio', action: 'valve-lift-at-.200', turns: true });
    expect(nextOf(open)?.sentence).toMatch(/^1 intake: /);
  });

  test('a reading that was taken that way is not asked for again', () => {
    // The lash was at zero and the plunger parallel from the first: neither is offered.
    for (const lifts of [[0.54], [0.535, 0.5355], [0.5765], [0.6, 0.6]]) {
      const result = assess(buildOf(lifts)).explanations[0]?.result;
      expect(['lash-to-zero', 'align-plunger', 'light-spring-solid-lifter']).not.toContain(
        result?.nextReading?.action,
      );
    }
  });

  test('with everything there, what was found is said', () => {
    const card = {
      assumedRatio: 1.6,
      intake: { ...lobe(0.348, { lash: 0.016 }), centreline: 1.85 },
      exhaust: { ...lobe(0.339, { lash: 0.016 }), centreline: 1.95 },
    };
    const passes = passesOf('valve-lift', [0.557, 0.557, 0.557], { counted: true });
    const told = buildOf([], { card, passes, arms: [stamped('1.6')] });
    const next = nextOf(told);
    expect(next).toMatchObject({ step: 'notes', action: 'said', turns: false });
    // The last minute of a call: found, not known, who, by when (common practice, no published source).
    expect(next?.sentence).toMatch(
      /^Say what was found\. 1 intake: 1\.60\d ± .*agrees.* Not known: the other valves\. Then who does what by when; write it in the notes\.$/,
    );
    const sheet = [read(1, 'intake', 'valve-lift', 0.557)];
    expect(nextOf({ ...told, sheet })?.sentence).not.toContain('Not known');
    const notes = [{ id: 'n', line: 99, kind: 'advice', body: 'told', done: false } as const];
    expect(nextOf({ ...told, notes })).toMatchObject({ action: 'close' });
  });

  test('at the engine what was found is shown where it was found, not the notes of the desk', () => {
    const found = buildOf([0.557, 0.557, 0.557]);
    expect(nextOf(found)).toMatchObject({ step: 'notes', action: 'said' });
    const there = forBench(assess(found)).next;
    expect(there?.step).toBe('ratio');
    expect(there?.sentence).toMatch(/^Found: 1 intake: 1\.60\d .*The desk says who does what by when\.$/);
    const notes = [{ id: 'n', line: 99, kind: 'advice', body: 'told', done: false } as const];
    expect(forBench(assess({ ...found, notes })).next).toMatchObject({ step: 'ratio', action: 'close' });
  });

  // Numbers of our own: lobe .350, arm 1.6; .560 less .016 of lash is .544.
  test('what was read and is of no use yet goes before what was not begun', () => {
    const leftIn = buildOf([0.544, 0.544, 0.5445], {
      setUps: [{ ...cleanSetUp, lash: 'set', lashSetting: 0.016 * 0.0254 }],
    });
    const { next, headlines } = assess(leftIn);
    expect(headlines[0]?.sentence).toMatch(/First: a reading at zero lash/);
    expect(next?.sentence).toMatch(/a reading at zero lash/);
  });

  test('what the goal does not need is not asked for: neither centrelines nor lash of the card for a ratio', () => {
    const bare = buildOf([0.557, 0.557, 0.557]);
    expect(assess(bare).missing.map(({ id }) => id)).toContain('missing:cam:centrelines');
    expect(nextOf(bare)).toMatchObject({ action: 'said' });
  });

  test.each(Object.keys(GOALS).map(goalOf))(
    '%s: what its answer needs besides is asked by its steps',
    (goal) => {
      const { needs, asks } = planOf(goal);
      const begun = { ...nothingKnown, engine: { cylinders: 8 }, call: { ...nothingKnown.call, goal } };
      const known = assess({ ...begun, sheet: [read(1, 'intake', 'valve-lift', 0.557)] }).needs;
      const codes = known.filter(({ step }) => asks.includes(step)).map(({ id }) => id.split(':').at(-1));
      for (const code of needs) expect(codes).toContain(code);
    },
  );

  test('a ratio that was read is no business of a call about the adjusters', () => {
    const noisy = { ...turnMissed, call: { ...nothingKnown.call, goal: 'adjuster' as const } };
    expect(nextOf(noisy)).toMatchObject({ step: 'adjuster', action: 'lash' });
  });

  test('a closed call has nothing next', () => {
    expect(nextOf(withCall({ closed: true }))).toBeUndefined();
  });
});
