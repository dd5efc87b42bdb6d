import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, lobe, passesOf, stamped } from './plain.ts';
import { read } from './plain-build.ts';

/*
 * What was answered, or looked at, is not asked once more, and what is asked next is not what was just done. How often and
 * in which order things are asked is common practice, no published source.
 */
const told = (build: Evidence) => {
  const { headlines, questions, next, notToRun } = assess(build);
  return {
    text: headlines.map(({ sentence }) => sentence).join('\n'),
    open: questions.filter(({ answered }) => answered === undefined).map(({ code }) => code),
    strong: questions
      .filter(({ answered, weight }) => answered === undefined && weight === 'strong')
      .map(({ code }) => code),
    testOf: (code: string) => questions.find((each) => each.code === code)?.test ?? '',
    next: next?.sentence ?? '',
    action: next?.action ?? '',
    notToRun: notToRun.map(({ wayOut }) => wayOut).join('\n'),
  };
};

/** The answer to the first question of a code, as it stands. */
function answered(build: Evidence, code: string, answer: string, line = 100): Evidence {
  const question = assess(build).questions.find((each) => each.code === code);
  if (question === undefined) throw new Error(`${code} is not asked`);
  const said: AnswerEvidence = {
    id: `answer-${line}`,
    line,
    code,
    questionId: question.id,
    question: question.ask,
    answer,
    ...(question.about.of === 'set-up' ? { setUpId: question.about.setUpId } : {}),
    ...(answer === 'found' || answer === 'not-found' ? { found: answer === 'found' } : {}),
  };
  return { ...build, answers: [...build.answers, said] };
}

const LOBE_READ = { ...cleanSetUp, lobeSource: 'indicator' as const };
/** A lobe that was read at the lifter, and lifts over it. */
const over = (lobes: readonly number[], lifts: readonly number[], more: Partial<Evidence> = {}) =>
  buildOf([], {
    setUps: [LOBE_READ],
    passes: [...passesOf('lobe-lift', lobes), ...passesOf('valve-lift', lifts)],
    ...more,
  });

describe('two springs that may be noted the wrong way round', () => {
  const setUp = (number: number, spring: 'light' | 'running') => ({
    ...cleanSetUp,
    id: `set-up-${number}`,
    number,
    spring,
  });
  const build = buildOf([], {
    setUps: [setUp(1, 'light'), setUp(2, 'running')],
    passes: [1, 2].flatMap((number) =>
      passesOf('valve-lift', number === 1 ? [0.54, 0.54, 0.54] : [0.56, 0.56, 0.56], {
        setUpId: `set-up-${number}`,
        counted: true,
      }),
    ),
  });

  test('are asked about once: that each is as noted is said of both', () => {
    expect(told(build).strong).toContain('springs-swapped');
    expect(told(answered(build, 'springs-swapped', 'not-found')).open).not.toContain('springs-swapped');
  });
});

describe('what a figure was found to be', () => {
  // .557 over .348 is a ratio of 1.6, and .557 was entered as the lobe: two turns over .348 by chance, near enough.
  const gross = over([0.544, 0.544, 0.544], [0.544, 0.544, 0.544], {
    card: { assumedRatio: 1.6, intake: lobe(0.34), exhaust: lobe(0.339) },
  });

  test('nothing else is asked of it', () => {
    expect(told(gross).strong).toEqual(expect.arrayContaining(['gross-lift-as-lobe', 'turn-miscounted']));
    const { open, text } = told(answered(gross, 'gross-lift-as-lobe', 'found'));
    expect(open).not.toContain('turn-miscounted');
    expect(text).toContain('passes 1, 2 and 3 of the lobe entered again');
    expect(text).not.toContain('Then:');
  });

  test('looked at and not so, the other is asked as before', () => {
    expect(told(answered(gross, 'gross-lift-as-lobe', 'not-found')).open).toContain('turn-miscounted');
  });

  // .457 is one turn of .100 in under 1.6 × .348 = .557.
  const turned = buildOf([0.457, 0.457, 0.457]);

  test('passes of the same numbers, read again because of it, take the place of the first', () => {
    const found = answered(turned, 'turn-miscounted', 'found');
    expect(told(found).text).toContain('passes 1, 2 and 3 entered again');
    const again = passesOf('valve-lift', [0.557, 0.557, 0.557]).map((pass, index) => ({
      ...pass,
      id: `again-${index}`,
      line: 110 + index,
    }));
    const { text } = told({ ...found, passes: [...found.passes, ...again] });
    expect(text).toMatch(/agrees with the 1\.6/);
    expect(text).not.toMatch(/entered again/);
  });

  test('one of them that was only put right is no such pass', () => {
    const found = answered(turned, 'turn-miscounted', 'found');
    const [first, ...others] = found.passes;
    if (first === undefined) throw new Error('no pass');
    const right = { ...first, id: 'right', line: 110, entered: first.line, value: first.value + 0.00001 };
    const { text } = told({ ...found, passes: [{ ...first, standing: false }, right, ...others] });
    expect(text).toMatch(/entered again/);
  });

  test('the small hand was looked at: something else is read than one more pass with it', () => {
    expect(told(turned).next).toContain('small hand');
    const { action, text } = told(answered(turned, 'turn-miscounted', 'not-found'));
    expect(action).not.toBe('one-more-pass');
    expect(text).not.toContain('take one more pass');
  });
});

describe('two digits the wrong way round', () => {
  test.each([
    ['at the valve, three passes of it', [0.348, 0.348, 0.348], [0.584, 0.584, 0.584], 1.57],
    ['at the valve, one pass', [0.347, 0.347, 0.347], [0.537], 1.65],
    ['at the lobe, where the valve says otherwise', [0.374, 0.374, 0.374], [0.5555, 0.556, 0.5555], 1.6],
  ])('%s', (_, lobes, lifts, stamp) => {
    const build = over(lobes, lifts, {
      arms: [stamped(String(stamp))],
      card: { assumedRatio: stamp, intake: lobe(lobes[0] === 0.348 ? 0.348 : 0.347), exhaust: lobe(0.339) },
    });
    expect(told(build).strong).toContain('digits-swapped');
    expect(told(build).action).toBe('digits-swapped');
  });

  test('not of a lobe that its valve bears out: then it is the card that says otherwise', () => {
    const build = over([0.374, 0.374, 0.374], [0.5985, 0.598, 0.5985], {
      card: { assumedRatio: 1.6, intake: lobe(0.347), exhaust: lobe(0.339) },
    });
    expect(told(build).open).not.toContain('digits-swapped');
  });
});

describe('a lobe under its card', () => {
  const down = over([0.336, 0.336, 0.336], [0.5375, 0.5375, 0.5375], {
    card: { assumedRatio: 1.6, intake: lobe(0.348), exhaust: lobe(0.3) },
  });

  test('others read alike: nobody is sent to read more of them, nor told that they do not agree', () => {
    const sheet = [read(3, 'intake', 'lobe-lift', 0.336), read(5, 'intake', 'lobe-lift', 0.336)];
    const { text, testOf } = told({ ...down, sheet });
    expect(text).toContain('as do the other intake lobes');
    expect(testOf('card-not-this-lobe')).toMatch(/^Look at the number/);
  });

  test('it is that card and that lobe: it is told as worn or read short, and no other lobe is wanted for that', () => {
    expect(told(down).text).toContain('which lobe, which card, or wear?');
    const { text, action, notToRun } = told(answered(down, 'card-not-this-lobe', 'not-found'));
    expect(text).toContain('worn, or read short');
    expect(text).not.toContain('which card');
    expect(action).not.toMatch(/^lobe-siblings/);
    expect(notToRun).toContain('qualified shop');
  });
});

describe('a caliper’s lobe that was struck out', () => {
  test('read at the lifter in another set-up, that serves, and no lift is wanted of the second', () => {
    const first = { ...cleanSetUp, lobeSource: 'caliper' as const };
    const second = { ...LOBE_READ, id: 'set-up-2', number: 2 };
    const build = buildOf([0.557, 0.557, 0.557], { setUps: [first, second] });
    const { text, action } = told({
      ...build,
      passes: [
        ...build.passes,
        ...passesOf('lobe-lift', [0.336], { standing: false }),
        ...passesOf('lobe-lift', [0.348, 0.348, 0.348], { setUpId: second.id }),
      ],
    });
    expect(text).toMatch(/agrees with the 1\.6/);
    expect(action).not.toMatch(/^valve-passes/);
  });
});

describe('two arms on one valve', () => {
  test('what the card makes of the lift is said of the arm that the headline is of', () => {
    const build = buildOf([], {
      arms: [stamped('1.6'), stamped('1.55', 'arm-b')],
      setUps: [cleanSetUp, { ...cleanSetUp, id: 'set-up-2', number: 2, armId: 'arm-b' }],
      passes: [
        ...passesOf('valve-lift', [0.557, 0.557, 0.557]),
        ...passesOf('valve-lift', [0.5395, 0.5395, 0.5395], { setUpId: 'set-up-2' }),
      ],
    });
    // B is under the card's lift by the card's own ratio; A, which sits there, is not.
    expect(told(build).text).toContain('1 intake with A: ');
    expect(told(build).text).not.toContain('because the card works with');
    const ofB = told({ ...build, seats: [{ cylinder: 1, valve: 'intake', armId: 'arm-b' }] }).text;
    expect(ofB).toMatch(/1 intake with B: the lift is .* because the card works with 1\.6/);
  });
});

describe('a lifter that sinks', () => {
  test('is asked about once', () => {
    const build = buildOf([0.549, 0.544, 0.539], { setUps: [{ ...cleanSetUp, lifter: 'hydraulic' }] });
    expect(told(build).strong.filter((code) => code === 'falling-passes' || code === 'lifter-sunk')).toEqual([
      'falling-passes',
    ]);
  });
});

describe('a card for another rocker', () => {
  test('is asked about once, however many valves are read over it', () => {
    const second = { ...cleanSetUp, id: 'set-up-2', number: 2, cylinder: 3, armId: 'arm-b' };
    const build = buildOf([], {
      card: { assumedRatio: 1.5, intake: lobe(0.348), exhaust: lobe(0.339) },
      arms: [stamped('1.6'), stamped('1.6', 'arm-b')],
      setUps: [cleanSetUp, second],
      passes: [
        ...passesOf('valve-lift', [0.557, 0.557, 0.557]),
        ...passesOf('valve-lift', [0.557, 0.557, 0.557], { setUpId: second.id }),
      ],
    });
    expect(told(build).open.filter((code) => code === 'card-ratio')).toHaveLength(1);
    const { open } = told(answered(build, 'card-ratio', 'not-found'));
    expect(open).not.toContain('card-ratio');
  });
});

describe('two gaps of one valve', () => {
  test('it is said of which of them the lash is asked', () => {
    const gap = (value: number, readAs: string) => read(1, 'intake', 'piston-to-valve', value, { readAs });
    const asks = (sheet: Evidence['sheet']) =>
      assess(buildOf([], { sheet, engine: { lifter: 'solid-flat' } }))
        .questions.filter(({ code }) => code === 'gap-lash-not-said')
        .map(({ ask }) => ask)
        .join(' ');
    expect(asks([gap(0.104, '.104 in'), gap(0.176, '.176 in')])).toMatch(
      /of 1 intake, \.104 in, was read\?$/,
    );
    expect(asks([gap(0.104, '.104 in')])).toMatch(/of 1 intake was read\?$/);
  });
});
