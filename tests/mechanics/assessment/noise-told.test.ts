import { describe, expect, test } from 'vitest';
import { factsOf, logged, noiseOf, said, spokenOf } from './noise-build.ts';

/* Common practice, no published source: damage is asked after first, parts come off last, nobody runs what is loose. */

const one = said('noise-which', 'one', { place: { cylinder: 5, valve: 'exhaust' } });
const lineOf = (noise: ReturnType<typeof noiseOf>) => noise.headlines.find(({ step }) => step === 'noise');

describe('whether the call is about it', () => {
  const other = { goal: 'verify-ratio' } as const;
  test('its goal, or something of it that was answered', () => {
    expect(noiseOf({}).details.noise.active).toBe(true);
    expect(noiseOf({}).questions.map(({ code }) => code)).toContain('noise-signs');
    const quiet = noiseOf({}, other);
    expect(quiet.details.noise.active).toBe(false);
    expect(quiet.questions.filter(({ code }) => code.startsWith('noise-'))).toEqual([]);
    expect(quiet.notToRun).toEqual([]);
    const answered = noiseOf({ answers: [said('noise-oil', 'low')] }, other);
    expect(answered.details.noise.active).toBe(true);
    expect(lineOf(answered)).toBeDefined();
  });

  test('without a fact there is no line of it', () => {
    expect(lineOf(noiseOf({}))).toBeUndefined();
    expect(lineOf(noiseOf({ answers: [said('noise-oil', 'not-known')] }))).toBeUndefined();
  });
});

describe('an answer', () => {
  test('is a fact with its words, its valve and what it rests on', () => {
    const nut = said('noise-nut', 'moved: a quarter turn', { place: { cylinder: 5, valve: 'exhaust' } });
    const [fact] = factsOf(noiseOf({ answers: [nut, one] }), 'noise-nut');
    expect(fact?.text).toMatch(/^Nut: it has moved, 5 exhaust, “a quarter turn”$/);
    expect(fact?.restsOn).toEqual(['noise-nut-50']);
    const bare = factsOf(noiseOf({ answers: [said('noise-oil', 'low')] }), 'noise-oil')[0];
    expect(bare?.text).toBe('Oil: lower than it was, or the oil is low');
  });

  test('said again puts right what was said before; what is not known is no fact', () => {
    const twice = [said('noise-oil', 'low', { line: 60 }), said('noise-oil', 'usual', { line: 70 })];
    for (const answers of [twice, twice.toReversed()]) {
      expect(spokenOf(noiseOf({ answers }), 'noise-oil')).toEqual({ for: [], against: ['oil'] });
    }
    const unknown = noiseOf({ answers: [said('noise-oil', 'not-known')] });
    expect(factsOf(unknown)).toEqual([]);
    expect(unknown.details.noise.known).toContain('noise-oil');
  });

  test('several signs count beside each other, until there are none', () => {
    const signs = [said('noise-signs', 'metal', { line: 60 }), said('noise-signs', 'tight', { line: 61 })];
    const both = noiseOf({ answers: signs });
    expect(
      factsOf(both, 'noise-signs')
        .map(({ key }) => key)
        .toSorted(),
    ).toEqual(['noise-signs:metal', 'noise-signs:tight']);
    const twice = noiseOf({ answers: [...signs, said('noise-signs', 'metal', { line: 62 })] });
    expect(factsOf(twice, 'noise-signs')).toHaveLength(2);
    const none = noiseOf({ answers: [...signs, said('noise-signs', 'none', { line: 63 })] });
    expect(factsOf(none, 'noise-signs')).toEqual([]);
    // What was told stops it all the same, until the desk lifts it.
    expect(none.stop.map(({ id }) => id).toSorted()).toEqual([
      'stop:sign-of-damage:metal',
      'stop:sign-of-damage:tight',
    ]);
  });
});

describe('a sign of damage stops it', () => {
  test.each([
    ['noise-signs', 'metal', 'sign-of-damage', 'build'],
    ['noise-signs', 'broken', 'sign-of-damage', 'build'],
    ['noise-signs', 'contact', 'sign-of-damage', 'build'],
    ['noise-history', 'grew-again', 'lash-grew-again', 'valve'],
    ['noise-nut', 'off', 'part-damaged', 'valve'],
    ['noise-stud', 'moves', 'part-damaged', 'valve'],
    ['noise-pushrod', 'bent', 'part-damaged', 'valve'],
    ['noise-roller', 'pin-moved', 'part-damaged', 'valve'],
    ['noise-trunnion', 'missing', 'part-damaged', 'valve'],
  ])('%s %s: %s of the %s', (question, answer, code, of) => {
    const { stop } = noiseOf({ answers: [one, said(question, answer)] });
    expect(stop).toHaveLength(1);
    expect(stop[0]).toMatchObject({
      code,
      about: { of },
      from: 'person',
      entryId: `${question}-50`,
      line: 50,
    });
    expect(stop[0]?.sentence).toMatch(/^Do not turn it: .+\.$/);
    expect(stop[0]?.restsOn).toEqual([`${question}-50`]);
    const [alone] = noiseOf({ answers: [said(question, answer)] }).stop;
    expect(alone?.about.of).toBe('build');
  });

  test('told twice it is one stop on both, of the newest', () => {
    const answers = [
      said('noise-pushrod', 'bent', { line: 60 }),
      said('noise-pushrod', 'bent', { line: 61 }),
    ];
    const { stop } = noiseOf({ answers });
    expect(stop).toHaveLength(1);
    expect(stop[0]).toMatchObject({ line: 61, restsOn: ['noise-pushrod-60', 'noise-pushrod-61'] });
  });

  test.each([
    ['noise-pushrod', 'worn, and one is bent', true],
    ['noise-tip', 'smooth. a piece is missing', true],
    ['noise-tip', 'smooth, nothing is missing', false],
    ['noise-tip', 'smooth, no crack but it is gone', true],
    ['noise-tip', 'worn a little', false],
    ['noise-oil', 'low, some is missing', false],
  ])('words beside an answer: %s “%s” %s', (question, answer, stops) => {
    expect(noiseOf({ answers: [said(question, answer)] }).stop).toHaveLength(stops ? 1 : 0);
  });

  test('worn, and bent beside it, counts as bent', () => {
    const bent = noiseOf({ answers: [said('noise-pushrod', 'worn, one is bent')] });
    expect(spokenOf(bent, 'noise-pushrod').for).toEqual(['touching']);
    const worn = noiseOf({ answers: [said('noise-pushrod', 'worn, not bent')] });
    expect(spokenOf(worn, 'noise-pushrod').for).toEqual(['pushrod']);
    const pin = noiseOf({ answers: [said('noise-roller', 'worn, its pin has walked out')] });
    expect(pin.stop).toHaveLength(1);
  });
});

describe('nobody runs it', () => {
  const ids = (noise: ReturnType<typeof noiseOf>) => noise.notToRun.map(({ id }) => id);

  test('while it runs now, its oil is low or its nut moved', () => {
    const runs = noiseOf({}, { engineState: 'runs' });
    expect(ids(runs)).toEqual(['not-to-run:noise:runs']);
    expect(runs.notToRun[0]?.atOnce).toBe(true);
    expect(ids(noiseOf({}))).toEqual([]);
    const low = noiseOf({ answers: [one, said('noise-oil', 'low')] });
    expect(ids(low)).toEqual(['not-to-run:noise-oil:low']);
    expect(low.notToRun[0]).toMatchObject({ what: 'run', about: { of: 'build' } });
    const nut = noiseOf({ answers: [one, said('noise-nut', 'moved')] });
    expect(ids(nut)).toEqual(['not-to-run:noise-nut:moved']);
    expect(nut.notToRun[0]?.about).toMatchObject({ of: 'valve', cylinder: 5 });
  });

  test('what was answered of the nut goes before the log; the log before nothing', () => {
    const lash = [logged(1, 'found', 0.018, 'moved')];
    expect(ids(noiseOf({ lash }))).toEqual(['not-to-run:noise-nut:log']);
    expect(ids(noiseOf({ lash, answers: [said('noise-nut', 'moved')] }))).toEqual([
      'not-to-run:noise-nut:moved',
    ]);
  });

  test('a nut of the log that had moved stands whichever valve is heard, and which it is is asked', () => {
    const lash = [logged(1, 'set', 0.02), logged(2, 'found', 0.034, 'moved')];
    const codes = (noise: ReturnType<typeof noiseOf>) => noise.questions.map(({ code }) => code);
    const heard = (...more: ReturnType<typeof said>[]) =>
      noiseOf({ lash, answers: [said('noise-signs', 'none'), one, ...more] });
    const other = heard();
    expect(ids(other)).toEqual(['not-to-run:noise-nut:log']);
    expect(other.notToRun[0]).toMatchObject({
      sentence: 'Do not run it: the nut of 2 intake has moved.',
      about: { of: 'valve', cylinder: 2, valve: 'intake' },
    });
    const asked = other.questions.find(({ code }) => code === 'noise-elsewhere');
    expect(asked?.ask).toBe(
      'The noise is at 5 exhaust; the lash log has the nut of 2 intake moved. Is that one valve or two?',
    );
    expect(other.next?.action).toBe('noise-elsewhere');
    expect(asked).toMatchObject({ weight: 'strong', restsOn: ['lash-2-2', 'noise-which-50'] });
    // The nut of the valve that is heard is one more.
    expect(ids(heard(said('noise-nut', 'moved')))).toEqual([
      'not-to-run:noise-nut:moved',
      'not-to-run:noise-nut:log',
    ]);
    expect(ids(heard(said('noise-nut', 'held')))).toEqual(['not-to-run:noise-nut:log']);
    const answered = (answer: string) =>
      heard(said('noise-elsewhere', answer, { line: 60, questionId: asked?.id ?? '' }));
    for (const answer of ['both', 'noise-there', 'line-wrong'])
      expect(ids(answered(answer))).toEqual(['not-to-run:noise-nut:log']);
    const settled = answered('both').questions.find(({ code }) => code === 'noise-elsewhere');
    expect(settled).toMatchObject({ weight: 'weak', answered: { answer: 'both' } });
    expect(answered('noise-there').next?.sentence).toContain('Answer once more which valve');
    expect(answered('line-wrong').next?.sentence).toContain('Strike that line');
    // Nothing is asked where the valve is the one of the log, or no one valve is heard.
    const same = said('noise-which', 'one', { place: { cylinder: 2, valve: 'intake' } });
    expect(codes(noiseOf({ lash, answers: [same] }))).not.toContain('noise-elsewhere');
    for (const which of ['several', 'all']) {
      const noise = noiseOf({ lash, answers: [said('noise-which', which)] });
      expect(codes(noise)).not.toContain('noise-elsewhere');
      expect(ids(noise)).toEqual(['not-to-run:noise-nut:log']);
    }
    const held = [...lash, logged(3, 'set', 0.02), logged(4, 'found', 0.02, 'held')];
    expect(codes(noiseOf({ lash: held, answers: [one] }))).not.toContain('noise-elsewhere');
    expect(ids(noiseOf({ lash: held, answers: [one] }))).toEqual([]);
  });

  test.each(['noise-thread', 'noise-pushrod', 'noise-tip', 'noise-roller', 'noise-trunnion'])(
    '%s worn',
    (question) => {
      expect(ids(noiseOf({ answers: [said(question, 'worn')] }))).toEqual([`not-to-run:${question}:worn`]);
    },
  );
});

describe('the line', () => {
  test('rules on nothing, says what was found and what most speaks for, in one breath', () => {
    const line = (...answers: Parameters<typeof said>[]) =>
      lineOf(noiseOf({ answers: answers.map((each) => said(...each)) }))?.sentence ?? '';
    expect(line(['noise-tip', 'worn'])).toMatch(/^No verdict\. Found: the stem’s tip or its cap is worn\./);
    expect(line(['noise-tip', 'worn'])).toContain('Most speaks for the stem’s tip or its cap.');
    expect(line(['noise-nut', 'moved'])).toContain('Most speaks for the locking.');
    expect(line(['noise-hours', 'slowly'])).toContain('Most speaks for wear on that valve.');
    expect(line(['noise-oil', 'usual'])).toContain('Nothing points to one cause yet.');
    expect(line(['noise-which', 'one'])).toContain('the locking, the stud itself and wear on that valve.');
    expect(line(['noise-signs', 'broken'])).toContain('4 causes are alike so far.');
    const three = line(['noise-signs', 'metal'], ['noise-oil', 'low'], ['noise-nut', 'moved']);
    for (const each of [
      three,
      line(['noise-tip', 'worn'], ['noise-roller', 'worn'], ['noise-trunnion', 'worn']),
    ]) {
      expect(each.split(' ').length).toBeLessThanOrEqual(25);
    }
  });
});
