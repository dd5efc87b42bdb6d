import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  AnswerEvidence,
  Evidence,
  SetUpEvidence,
  SetUpStatementEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, IN, lobe, passesOf, stamped } from './plain.ts';

/*
 * What is said late counts for the readings already there: by a statement, or as the answer to a question. Figures by
 * hand: .557/.348 = 1.6006.
 */

const UNSAID = { spring: 'not-said', lifter: 'not-said', lash: 'not-said', alignment: 'not-said' } as const;

const readBefore = (change: Partial<SetUpEvidence> = {}, lifts: readonly number[] = [0.557, 0.557, 0.5575]) =>
  buildOf(lifts, { setUps: [{ ...cleanSetUp, ...change }] });

const statement = (says: SetUpStatementEvidence['says'], line = 50): SetUpStatementEvidence => ({
  id: `statement-${line}`,
  line,
  setUpId: cleanSetUp.id,
  says,
  notKnown: [],
});

const answer = (code: string, text: string, more: Partial<AnswerEvidence> = {}): AnswerEvidence => ({
  id: `answer-${code}-${more.line ?? 60}`,
  line: 60,
  code,
  question: code,
  answer: text,
  setUpId: cleanSetUp.id,
  ...more,
});

const knownNow = (evidence: Evidence) => assess(evidence).details.setUps[0]?.setUp;
const askedOf = (evidence: Evidence, code: string) =>
  assess(evidence).questions.find((question) => question.code === code);
const headline = (evidence: Evidence) => assess(evidence).headlines[0]?.sentence;
const ratio = (evidence: Evidence) =>
  assess(evidence).quantities.find(({ id }) => id === `set-up-ratio:${cleanSetUp.id}`);
const inInches = (si: number | undefined) => (si === undefined ? undefined : Number((si / IN).toFixed(6)));

describe('each fact told later', () => {
  const { id: _, number: __, ...facts } = cleanSetUp;
  const WRONG: Partial<SetUpEvidence> = {
    cylinder: 2,
    valve: 'exhaust',
    armId: 'arm-b',
    spring: 'running',
    lifter: 'hydraulic',
    lash: 'set',
    restsOn: 'valve-tip',
    alignment: 'leaning',
    graduation: 0.0005 * IN,
    perTurn: 0.2 * IN,
    travel: 0.5 * IN,
    pushedIn: 0.1 * IN,
    errorLimit: 0.01 * IN,
    lobeSource: 'caliper',
    lobeErrorLimit: 0.01 * IN,
  };

  test.each(Object.entries(WRONG))('%s was %s at first: as if it had been right', (fact, wrong) => {
    const right = readBefore();
    const late = {
      ...readBefore({ [fact]: wrong }),
      statements: [statement({ [fact]: Reflect.get(facts, fact) })],
    };
    const { details: told, ...said } = assess(late);
    const { details: atOnce, ...expected } = assess(right);
    expect(said).toEqual(expected);
    expect(told.setUps).toEqual(atOnce.setUps);
  });

  test('all that was not said, told in one', () => {
    const { spring, lifter, lash, alignment } = cleanSetUp;
    const late = { ...readBefore(UNSAID), statements: [statement({ spring, lifter, lash, alignment })] };
    expect(headline(readBefore(UNSAID))).toContain('Not set against the 1.6 stamped on it yet');
    expect(headline(late)).toContain('agrees with the 1.6 stamped on it');
  });

  test('a later statement goes before an earlier one, and both before what was said at first', () => {
    const two = [statement({ spring: 'running' }, 50), statement({ spring: 'light' }, 51)];
    expect(knownNow({ ...readBefore(UNSAID), statements: two })?.spring).toBe('light');
    expect(knownNow({ ...readBefore(UNSAID), statements: two.toReversed() })?.spring).toBe('light');
  });

  test('an answer goes before an earlier statement, and a statement before an earlier answer', () => {
    const answers = [answer('spring-not-said', 'running')];
    const [before, after] = [statement({ spring: 'light' }, 50), statement({ spring: 'light' }, 70)];
    expect(knownNow({ ...readBefore(UNSAID), answers, statements: [before] })?.spring).toBe('running');
    expect(knownNow({ ...readBefore(UNSAID), answers, statements: [after] })?.spring).toBe('light');
  });

  test('what was no more than a guess is not known after all', () => {
    const late = { ...readBefore(), statements: [{ ...statement({}), notKnown: ['travel' as const] }] };
    expect(knownNow(late)).not.toHaveProperty('travel');
  });
});

describe('the lash told later', () => {
  const LEFT = 0.02 * IN;
  const setAtOnce = readBefore({ lash: 'set', lashSetting: LEFT }, [0.537, 0.537]);
  const before = readBefore({ lash: 'not-said' }, [0.537, 0.537]);

  test.each([
    ['a statement', { statements: [statement({ lash: 'set', lashSetting: LEFT })] }],
    ['the answer with its amount', { answers: [answer('lash-not-said', 'set', { value: LEFT })] }],
    ['yes, left in, with its amount', { answers: [answer('lash-left-in', 'yes', { value: LEFT })] }],
    ['the amount alone', { answers: [answer('lash-not-said', 'he says so', { value: LEFT })] }],
    [
      'left in at first, then how much',
      {
        answers: [
          answer('lash-left-in', 'found'),
          answer('lash-setting-not-said', 'set', { value: LEFT, line: 61 }),
        ],
      },
    ],
    [
      'what the log has, confirmed',
      { answers: [answer('lash-setting-not-said', 'as-logged', { value: LEFT })] },
    ],
  ])('%s: put back as if it had been said with the set-up', (_, late) => {
    const told = { ...before, ...late };
    expect(inInches(knownNow(told)?.lashSetting)).toBe(0.02);
    // (.537 + .020)/.348 = 1.6006
    expect(ratio(told)?.value).toBeCloseTo(1.6006, 4);
    expect(ratio(told)).toEqual(ratio(setAtOnce));
    expect(headline(told)).toBe(headline(setAtOnce));
    expect(headline(told)).not.toContain('how much is not said');
  });

  test.each([
    ['zero', 'lash-not-said', 'zero', 'zero'],
    ['yes, it was taken up', 'lash-not-said', 'yes', 'zero'],
    ['no, it was not taken up', 'lash-not-said', 'no', 'set'],
    ['yes, it was left in', 'lash-left-in', 'Yes', 'set'],
    ['no, it was not left in', 'lash-left-in', 'No.', 'zero'],
    ['no idea says nothing', 'lash-left-in', 'no idea', 'not-said'],
    ['not so sure says nothing', 'lash-left-in', 'not so sure', 'not-said'],
  ])('%s', (_, code, text, lash) => {
    expect(knownNow({ ...before, answers: [answer(code, text)] })?.lash).toBe(lash);
  });

  test('left in, and how much not said: that is asked, and an amount may go with the answer', () => {
    const question = askedOf(
      { ...before, statements: [statement({ lash: 'set' })] },
      'lash-setting-not-said',
    );
    expect(question?.ask).toMatch(/^How much lash was left in/);
    expect(question?.answers.map(({ code, takesValue }) => [code, takesValue ?? false])).toEqual([
      ['set', true],
      ['zero', false],
    ]);
  });

  test('every question that was answered stays with its answer', () => {
    const answers = [
      answer('lash-not-said', 'no, it was left in'),
      answer('lash-setting-not-said', 'set', { value: LEFT, line: 61 }),
    ];
    const { questions } = assess({ ...before, answers });
    const answered = questions.filter((question) => question.answered !== undefined);
    expect(answered.map(({ code, answered: said }) => [code, said?.answer])).toEqual([
      ['lash-not-said', 'no, it was left in'],
      ['lash-setting-not-said', 'set, .020 in'],
    ]);
  });

  test('an amount in somebody’s own words is put back to them, and not used unasked', () => {
    const told = { ...before, answers: [answer('lash-left-in', 'left in, .020 in', { found: true })] };
    expect(knownNow(told)?.lashSetting).toBeUndefined();
    const offered = askedOf(told, 'lash-setting-not-said')?.answers.find(({ code }) => code === 'as-told');
    expect(offered?.label).toBe('Yes, the .020 in that was told: “left in, .020 in”');
    expect(inInches(offered?.value)).toBe(0.02);
  });

  const line = (id: string, day: string, inches: number, more: object = {}) => ({
    id,
    line: 5,
    standing: true,
    cylinder: 1,
    valve: 'intake' as const,
    gap: { value: inches * IN },
    readAs: `${inches} in`,
    moment: 'set' as const,
    engine: 'cold' as const,
    nut: 'held' as const,
    day,
    ...more,
  });
  const onDay = (evidence: Evidence, day: string) => ({
    ...evidence,
    passes: evidence.passes.map((pass) => ({ ...pass, day })),
  });

  test('the newest lash of the log from before the passes is offered, and assumed nowhere', () => {
    const lash = [
      line('a', '2026-03-10', 0.016),
      line('b', '2026-03-12', 0.018),
      line('c', '2026-03-20', 0.024),
      line('d', '2026-03-12', 0.03, { valve: 'exhaust' }),
      line('e', '2026-03-13', 0.03, { standing: false }),
    ];
    const told = { ...onDay(before, '2026-03-14'), lash };
    expect(knownNow(told)?.lash).toBe('not-said');
    const offered = askedOf(told, 'lash-not-said')?.answers.filter(({ code }) => code === 'as-logged');
    expect(offered?.map(({ label }) => label)).toEqual(['Yes, the .018 in that was set on 2026-03-12']);
    expect(inInches(offered?.[0]?.value)).toBe(0.018);
  });

  test('a lash that was logged after the passes were read is not offered', () => {
    const told = { ...onDay(before, '2026-03-14'), lash: [line('c', '2026-03-20', 0.024)] };
    expect(askedOf(told, 'lash-not-said')?.answers.map(({ code }) => code)).toEqual(['zero', 'set']);
  });

  test('the card’s lash is offered, and never taken for what was in it', () => {
    const card = { intake: { ...lobe(0.348), lash: 0.016 * IN }, exhaust: lobe(0.339) };
    const told = { ...before, card, statements: [statement({ lash: 'set' })] };
    expect(askedOf(told, 'lash-setting-not-said')?.answers.map(({ code }) => code)).toEqual([
      'set',
      'as-card',
      'zero',
    ]);
    expect(knownNow(told)?.lashSetting).toBeUndefined();
  });
});

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

describe('mark, sold-as, card, spring, lifter and planned ratio, told after the readings', () => {
  const LATE: readonly (readonly [string, (evidence: Evidence) => Evidence])[] = [
    ['the mark', (evidence) => ({ ...evidence, arms: [stamped('1.6')] })],
    ['sold as', (evidence) => ({ ...evidence, rockers: { ...evidence.rockers, soldAs: 1.6 } })],
    [
      'the card',
      (evidence) => ({ ...evidence, card: { intake: lobe(0.348), exhaust: lobe(0.339), assumedRatio: 1.5 } }),
    ],
    [
      'the springs',
      (evidence) => ({ ...evidence, springs: { installedHeight: 1.9 * IN, seatLoad: 580, rate: 61_000 } }),
    ],
    [
      'the lifter of the engine',
      (evidence) => ({ ...evidence, engine: { ...evidence.engine, lifter: 'solid-flat' } }),
    ],
    ['the planned ratio', (evidence) => ({ ...evidence, rockers: { ...evidence.rockers, planned: 1.7 } })],
    [
      'the state',
      (evidence) => ({
        ...evidence,
        statements: [statement({ spring: 'light', lifter: 'solid', lash: 'zero' })],
      }),
    ],
  ];
  const bare: Evidence = {
    ...readBefore({ spring: 'not-said', lifter: 'not-said', lash: 'not-said' }),
    arms: [stamped('')],
    card: { intake: {}, exhaust: {} },
    rockers: {},
    call: { goal: 'clearances-after-a-change', contact: 'none', engineState: 'apart', closed: false },
  };
  const said = (order: readonly (readonly [string, (evidence: Evidence) => Evidence])[]) =>
    assess(order.reduce((evidence, [, tell]) => tell(evidence), bare));

  test('three orders of telling give one assessment', () => {
    const expected = said(LATE);
    expect(said(LATE.toReversed())).toEqual(expected);
    expect(said([...LATE.slice(3), ...LATE.slice(0, 3)])).toEqual(expected);
  });

  test.each(LATE)('%s, told last, changes what is said of the readings already there', (name, tell) => {
    const others = LATE.filter(([each]) => each !== name);
    const before = others.reduce((evidence, [, each]) => each(evidence), bare);
    const [was, now] = [assess(before), assess(tell(before))];
    expect([now.judgements, now.quantities, now.details.change]).not.toEqual([
      was.judgements,
      was.quantities,
      was.details.change,
    ]);
    expect(now).toEqual(said(LATE));
  });
});
