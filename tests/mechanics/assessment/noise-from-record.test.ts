import { describe, expect, test } from 'vitest';
import type { LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { factsOf, logged, noiseOf, said, spokenOf } from './noise-build.ts';
import { intakes, read } from './plain-build.ts';

/*
 * What a gap, a nut, a lobe or a mark speaks for: common practice, no published source. A gap that grew comes of the
 * lock, if its nut moved, and of wear or the stud, if it held; read on the base circle it shows no worn nose.
 */
const LOCKING = ['nut-lock', 'stud-thread', 'stud-top'];
const WEAR = ['lifter', 'lobe', 'pushrod', 'roller', 'tip', 'trunnion'];
const with_ = (...lash: LashEvidence[]) => noiseOf({ lash });
const one = (cylinder: number) => said('noise-which', 'one', { place: { cylinder, valve: 'intake' } });

describe('a gap of the lash log', () => {
  test.each([
    ['held', { for: [...WEAR, 'stud'].toSorted(), against: LOCKING }],
    ['moved', { for: LOCKING, against: WEAR }],
    ['not-looked', { for: [...LOCKING, ...WEAR, 'stud'].toSorted(), against: [] }],
  ] as const)('grown, its nut %s', (nut, wanted) => {
    const grown = with_(logged(1, 'set', 0.018), logged(2, 'found', 0.028, nut));
    expect(spokenOf(grown, 'lash:')).toEqual(wanted);
    const [fact, ...more] = factsOf(grown, 'lash:');
    expect(more).toEqual([]);
    expect(fact?.text).toMatch(/gap of 2 intake grew by \.010 in/);
    expect(fact?.restsOn).toEqual(['lash-2-1', 'lash-2-2']);
  });

  test('.004 is ordinary: it has not grown, and that speaks against lock, stud and what wears there', () => {
    const stayed = with_(logged(1, 'set', 0.018), logged(2, 'found', 0.022));
    expect(spokenOf(stayed, 'lash:')).toEqual({
      for: [],
      against: [...LOCKING, 'pushrod', 'stud', 'tip'].toSorted(),
    });
    expect(factsOf(with_(logged(1, 'set', 0.018), logged(2, 'found', 0.0221)), 'lash:')[0]?.text).toContain(
      'grew',
    );
    const between = { gap: { low: 0.021 * IN, high: 0.023 * IN } };
    expect(factsOf(with_(logged(1, 'set', 0.018), logged(2, 'found', 0, 'held', between)), 'lash:')).toEqual(
      [],
    );
  });

  test('read at another heat it says only how it was set; found alone it says nothing', () => {
    const heat = with_(logged(1, 'set', 0.018), logged(2, 'found', 0.03, 'held', { engine: 'hot' }));
    expect(spokenOf(heat, 'lash:')).toEqual({ for: ['setting'], against: [] });
    expect(factsOf(with_(logged(2, 'found', 0.03)), 'lash:')).toEqual([]);
  });

  test('three of three grew: not one part, but the oil or how all were set', () => {
    const all = [1, 2, 3].flatMap((cylinder) => [
      logged(1, 'set', 0.018, 'not-looked', { cylinder }),
      logged(2, 'found', 0.028, 'held', { cylinder }),
    ]);
    const noise = with_(...all);
    expect(factsOf(noise, 'lash').map(({ key }) => key)).toEqual(['lash']);
    expect(spokenOf(noise, 'lash')).toEqual({
      for: ['oil', 'setting'],
      against: [...LOCKING, ...WEAR, 'stud'].toSorted(),
    });
  });

  test('where one valve is named the others say nothing of it', () => {
    const lash = [
      ...[logged(1, 'set', 0.018), logged(2, 'found', 0.028, 'held')],
      ...[
        logged(1, 'set', 0.018, 'not-looked', { cylinder: 5 }),
        logged(2, 'found', 0.019, 'moved', { cylinder: 5 }),
      ],
    ];
    const named = noiseOf({ lash, answers: [one(5)] });
    expect(factsOf(named, 'lash:').map(({ text }) => /of (\d intake)/.exec(text)?.[1])).toEqual(['5 intake']);
    expect(named.details.noise.place).toMatchObject({ cylinder: 5, valve: 'intake' });
    expect(named.headlines.find(({ step }) => step === 'noise')?.about).toMatchObject({ cylinder: 5 });
    expect(factsOf(noiseOf({ lash }), 'lash:')).toHaveLength(2);
  });
});

describe('a nut in the lash log', () => {
  test('held or moved counts by itself where the gap did not grow', () => {
    expect(spokenOf(with_(logged(1, 'found', 0.018, 'moved')), 'nut:')).toEqual({
      for: LOCKING,
      against: WEAR,
    });
    const held = spokenOf(with_(logged(1, 'found', 0.018, 'held')), 'nut:');
    expect(held).toEqual({ for: [...WEAR, 'stud'].toSorted(), against: LOCKING });
    expect(factsOf(with_(logged(1, 'found', 0.018)), 'nut:')).toEqual([]);
    const grown = with_(logged(1, 'set', 0.018), logged(2, 'found', 0.028, 'held'));
    expect(factsOf(grown, 'nut:')).toEqual([]);
    const [fact] = factsOf(with_(logged(1, 'found', 0.018, 'moved'), logged(2, 'found', 0.018)), 'nut:');
    expect(fact?.restsOn).toEqual(['lash-2-1']);
  });

  test('answered in the words of the log it is one fact', () => {
    const both = noiseOf({
      lash: [logged(1, 'found', 0.018, 'moved')],
      answers: [said('noise-nut', 'moved')],
    });
    expect(factsOf(both, 'nut:')).toEqual([]);
    expect(factsOf(both, 'noise-nut')).toHaveLength(1);
    expect(both.questions.map(({ code }) => code)).not.toContain('nut-told-twice');
  });

  test('answered otherwise it is asked, and neither counts before that', () => {
    const lash = [logged(1, 'found', 0.018, 'held')];
    const open = noiseOf({ lash, answers: [said('noise-nut', 'moved')] });
    const asked = open.questions.find(({ code }) => code === 'nut-told-twice');
    expect(asked?.ask).toContain('2 intake');
    expect(asked?.restsOn.toSorted()).toEqual(['lash-2-1', 'noise-nut-50']);
    expect([...factsOf(open, 'nut:'), ...factsOf(open, 'noise-nut')]).toEqual([]);
    const settle = (answer: string) =>
      noiseOf({
        lash,
        answers: [
          said('noise-nut', 'moved'),
          said('nut-told-twice', answer, { line: 60, questionId: asked?.id ?? '' }),
        ],
      });
    expect(spokenOf(settle('held'), 'noise-nut').against).toEqual(LOCKING);
    expect(spokenOf(settle('moved'), 'noise-nut').for).toEqual(LOCKING);
  });

  test('of another valve than the one that is named it is no contradiction', () => {
    const answers = [said('noise-nut', 'moved'), one(5)];
    const other = noiseOf({ lash: [logged(1, 'found', 0.018, 'held')], answers });
    expect(other.questions.map(({ code }) => code)).not.toContain('nut-told-twice');
    expect(spokenOf(other, 'noise-nut').for).toEqual(LOCKING);
  });
});

/* Whichever the count, a nut that moved is the lock; what stayed on other valves says nothing of those that did not. */
describe('several nuts that moved', () => {
  const grown = (cylinder: number, nut: 'held' | 'moved') => [
    logged(1, 'set', 0.02, 'not-looked', { cylinder }),
    logged(2, 'found', 0.03, nut, { cylinder }),
  ];
  const stayed = (cylinder: number) => [
    logged(1, 'set', 0.02, 'not-looked', { cylinder }),
    logged(2, 'found', 0.02, 'held', { cylinder }),
  ];
  const line = (noise: ReturnType<typeof noiseOf>) =>
    noise.headlines.find(({ step }) => step === 'noise')?.sentence;

  test('three of three: the locking, and not the oil', () => {
    const three = with_(...[2, 3, 7].flatMap((cylinder) => grown(cylinder, 'moved')));
    expect(spokenOf(three, 'lash').for).toEqual(LOCKING);
    expect(line(three)).toContain('Most speaks for the locking');
    // Held, it is what all have in common.
    const held = with_(...[2, 3, 7].flatMap((cylinder) => grown(cylinder, 'held')));
    expect(spokenOf(held, 'lash').for).toEqual(['oil', 'setting']);
  });

  test('three beside five that stayed', () => {
    const some = with_(
      ...[2, 3, 7].flatMap((cylinder) => grown(cylinder, 'moved')),
      ...[1, 4, 5, 6, 8].flatMap(stayed),
    );
    expect(line(some)).toContain('Most speaks for the locking');
    expect(spokenOf(some, 'lash:others')).toEqual({ for: [], against: ['oil', 'setting'] });
    expect(factsOf(some, 'lash:others')[0]?.text).toBe(
      'Lash log: the gaps of 5 other valves did not grow past the ordinary',
    );
    expect(factsOf(some, 'nut:')).toEqual([]);
    const one = with_(...grown(2, 'moved'), ...stayed(3));
    expect(factsOf(one, 'lash:others')[0]?.text).toBe('Lash log: the gap of 3 intake has not grown');
    // Of valves that all stayed it is told of each.
    expect(factsOf(with_(...stayed(1), ...stayed(3)), 'lash:others')).toEqual([]);
  });
});

describe('a nut that had moved is not run on', () => {
  const stays = (...lash: LashEvidence[]) =>
    with_(...lash).notToRun.filter(({ id }) => id.includes('noise-nut'));
  const moved = logged(1, 'found', 0.02, 'moved');

  test('until it was set again and found held, with its gap, at the same heat', () => {
    expect(stays(moved)).toHaveLength(1);
    expect(stays(moved)[0]?.sentence).toContain('2 intake');
    expect(stays(moved, logged(2, 'set', 0.018))).toHaveLength(1);
    expect(stays(moved, logged(2, 'found', 0.018, 'held'))).toHaveLength(1);
    const set = [moved, logged(2, 'set', 0.018)];
    expect(stays(...set, logged(3, 'found', 0.018, 'held'))).toEqual([]);
    expect(stays(...set, logged(3, 'found', 0.022, 'held'))).toEqual([]);
    expect(stays(...set, logged(3, 'found', 0.0225, 'held'))).toHaveLength(1);
    expect(stays(...set, logged(3, 'found', 0.018))).toHaveLength(1);
    expect(stays(...set, logged(3, 'found', 0.018, 'held', { engine: 'hot' }))).toHaveLength(1);
    expect(stays(logged(1, 'set', 0.018), logged(2, 'found', 0.018, 'held'))).toEqual([]);
  });
});

describe('what the sheet and the marks say', () => {
  test('a lobe that is down on its siblings speaks for it and its lifter; level, against it', () => {
    const down = noiseOf({ sheet: intakes({ 3: { lobe: 0.33 } }) });
    expect(spokenOf(down, 'lobe:')).toEqual({ for: ['lifter', 'lobe'], against: [] });
    expect(factsOf(down, 'lobe:').map(({ key }) => key)).toHaveLength(1);
    expect(factsOf(down, 'lobe:')[0]?.text).toContain('3 intake');
    expect(factsOf(noiseOf({ sheet: intakes() }), 'lobe:')).toEqual([]);
    const level = noiseOf({ sheet: intakes(), answers: [one(4)] });
    expect(spokenOf(level, 'lobe:')).toEqual({ for: [], against: ['lobe'] });
    expect(level.details.noise.known).toContain('lobe');
    // Two are none to be level with.
    const two = noiseOf({ sheet: intakes().slice(0, 4), answers: [one(1)] });
    expect(factsOf(two, 'lobe:')).toEqual([]);
  });

  const gaps = (bind: number, piston: number) => [
    read(3, 'intake', 'coil-bind', bind),
    read(3, 'intake', 'piston-to-valve', piston),
  ];
  test('a gap that is short lets something touch; both over their limits, nothing does', () => {
    const short = noiseOf({ sheet: gaps(0.02, 0.12) });
    expect(spokenOf(short, 'gaps:')).toEqual({ for: ['touching'], against: [] });
    expect(factsOf(short, 'gaps:')[0]?.restsOn).toHaveLength(1);
    const clear = noiseOf({ sheet: gaps(0.1, 0.15), answers: [one(3)] });
    expect(spokenOf(clear, 'gaps:')).toEqual({ for: [], against: ['touching'] });
    expect(factsOf(clear, 'gaps:')[0]?.restsOn).toHaveLength(2);
    expect(clear.details.noise.known).toContain('touching');
    const [bind] = gaps(0.1, 0.15);
    const half = noiseOf({ sheet: bind === undefined ? [] : [bind], answers: [one(3)] });
    expect(factsOf(half, 'gaps:')).toEqual([]);
    expect(half.details.noise.known).not.toContain('touching');
  });

  test('a mark that is asked about speaks for tip and roller, of the valve it is on', () => {
    const tipMarks = [0.2, 0.21].map((width, at) => ({
      ...{ id: `mark-${at}`, line: at + 1, standing: true, cylinder: 3, valve: 'intake' as const },
      ...{ width: width * IN, side: 'sideways' as const, readAs: '' },
    }));
    const marked = noiseOf({ tipMarks });
    expect(spokenOf(marked, 'mark:')).toEqual({ for: ['roller', 'tip'], against: [] });
    expect(factsOf(marked, 'mark:')).toHaveLength(1);
    expect(factsOf(noiseOf({ tipMarks, answers: [one(4)] }), 'mark:')).toEqual([]);
    expect(factsOf(noiseOf({ tipMarks, answers: [one(3)] }), 'mark:')).toHaveLength(1);
  });
});
