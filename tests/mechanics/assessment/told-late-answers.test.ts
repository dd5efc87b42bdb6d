import { describe, expect, test } from 'vitest';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { buildOf, passesOf } from './plain.ts';
import { answer, askedOf, headline, knownNow, readBefore, statement, UNSAID } from './told-late.ts';

const assess = assessAsTold('told-late-answers');

describe('other answers that are a state', () => {
  test.each([
    ['alignment-not-said', 'leaning', 'alignment', 'leaning'],
    ['alignment-not-said', 'yes', 'alignment', 'parallel'],
    ['plunger-tilted', 'parallel: looked from both sides', 'alignment', 'parallel'],
    ['plunger-tilted', 'yes', 'alignment', 'leaning'],
    ['rests-on-not-said', 'valve-tip', 'restsOn', 'valve-tip'],
    ['lifter-not-said', 'locked: pumped up', 'lifter', 'locked'],
    ['valve-swapped', 'exhaust', 'valve', 'exhaust'],
  ])('%s answered %s', (code, text, fact, known) => {
    const evidence = readBefore({ ...UNSAID, restsOn: 'not-said' });
    expect(knownNow({ ...evidence, answers: [answer(code, text)] })).toHaveProperty(fact, known);
  });

  test('“looked, it is the intake” denies that it was another valve', () => {
    const answers = [answer('valve-swapped', 'looked, it is not the exhaust')];
    expect(knownNow({ ...readBefore(), answers })?.valve).toBe('intake');
  });

  test('what is not said is asked', () => {
    const codes = assess(readBefore({ ...UNSAID, restsOn: 'not-said' })).questions.map(({ code }) => code);
    expect(codes).toEqual(
      expect.arrayContaining([
        'spring-not-said',
        'lifter-not-said',
        'lash-not-said',
        'alignment-not-said',
        'rests-on-not-said',
      ]),
    );
  });

  test('the readings that were of the exhaust are told there, against its own lobe', () => {
    // .339 × 1.6 = .5424
    const read = readBefore({}, [0.5425, 0.542, 0.5425]);
    const late = { ...read, statements: [statement({ valve: 'exhaust' })] };
    expect(headline(late)).toMatch(/^1 exhaust: 1\.60\d.*agrees with the 1\.6 stamped on it/);
  });
});

describe('a turn that was missed on one pass', () => {
  const lifts = [0.457, 0.4572, 0.4568];
  const short = buildOf(lifts);
  const question = askedOf(short, 'turn-miscounted');
  const told = {
    ...short,
    answers: [answer('turn-miscounted', 'pass-2', { question: question?.ask ?? '' })],
  };

  test('each pass is one of the answers', () => {
    expect(question?.answers.map(({ code }) => code)).toEqual([
      'found',
      'pass-1',
      'pass-2',
      'pass-3',
      'not-found',
    ]);
  });

  test('that pass is to be entered again; the count of the others was looked at', () => {
    expect(headline(told)).toContain('pass 2 entered again or struck out');
    expect(askedOf(told, 'turn-miscounted')?.answered?.found).toBe(true);
    expect(assess(told).next?.sentence).toContain('Enter pass 2 of 1 intake again');
  });

  test('entered again, nobody is asked about the turn of the others once more', () => {
    const right = {
      ...told,
      passes: [
        ...told.passes.map((pass) => ({ ...pass, standing: pass.pass !== 2 })),
        ...passesOf('valve-lift', [0.5572], { id: 'again', pass: 2 }),
      ],
    };
    const asked = assess(right).questions.filter(({ code }) => code === 'turn-miscounted');
    expect(asked.every(({ answered }) => answered?.found === false)).toBe(true);
    expect(assess(right).explanations.every(({ result }) => result !== undefined)).toBe(true);
  });
});
