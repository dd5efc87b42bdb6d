import { describe, expect, test } from 'vitest';
import { bandsOf } from '../../../server/mechanics/assessment/ratio/compared/bands.ts';
import { chancesText } from '../../../server/mechanics/explain-readings/words.ts';
import { toldShares } from '../../../server/mechanics/ratio-readings/told-shares.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { buildOf, cleanSetUp, lobe, passesOf, stamped } from './plain.ts';

const assess = assessAsTold('ratio-bands');

describe('the bands of a light-spring ratio', () => {
  // Within 2 %, 2 to 4.5 % either way, beyond: common practice, no published source; edges of 1.6 by hand:
  // 1.528, 1.568, 1.632 and 1.672.
  test.for([
    [1.58, 1.62, ['within']],
    [1.6325, 1.671, ['over']],
    [1.62, 1.64, ['within', 'over']],
    [1.53, 1.567, ['under']],
    [1.56, 1.58, ['under', 'within']],
    [1.66, 1.69, ['over', 'far-over']],
    [1.4, 1.46, ['far-under']],
    [1.5, 1.7, ['far-under', 'under', 'within', 'over', 'far-over']],
  ] as const)('%d to %d against 1.6: %j', ([low, high, bands]) => {
    expect(bandsOf(1.6, low, high)).toEqual(bands);
  });
});

describe('chances that are told beside each other', () => {
  // Largest remainders, a method of dividing seats: by hand.
  test.for([
    [
      [0.575, 0.225, 0.175],
      ['about 60 %', 'about 20 %', 'about 15 %'],
    ],
    [
      [0.33, 0.33, 0.34],
      ['about 35 %', 'about 30 %', 'about 35 %'],
    ],
    [[0.999], ['about 95 %']],
    [
      [0.72, 0.02],
      ['about 70 %', 'under 5 %'],
    ],
  ] as const)('%j: %j', ([chances, texts]) => {
    expect(chancesText(chances)).toEqual(texts);
  });

  test('never add to more than a hundred', () => {
    for (let a = 0; a <= 100; a += 3)
      for (let b = 0; a + b <= 100; b += 3) {
        const texts = chancesText([a / 100, b / 100, (100 - a - b) / 100]);
        const sum = texts.map(
          (text) => Number(/\d+/.exec(text)?.[0] ?? 0) * (text.startsWith('under') ? 0 : 1),
        );
        expect(sum.reduce((all, each) => all + each, 0)).toBeLessThanOrEqual(100);
      }
  });
});

describe('the shares of a budget as they are told', () => {
  test('add to a hundred, and what cancels is taken off the two limits: .5 and .4 less .1 leave .444 and .356', () => {
    const budget = [
      { source: 'valve lift, repeatability', share: 0.2 },
      { source: 'valve lift, error limit', share: 0.5 },
      { source: 'lobe lift, error limit', share: 0.4 },
      { source: 'one indicator for both, errors that cancel', share: -0.1 },
    ];
    expect(toldShares(budget)).toEqual([20, 44, 36, undefined]);
  });

  test('thirds: 34, 33 and 33', () => {
    expect(toldShares([1, 2, 3].map((each) => ({ source: `part ${each}`, share: 1 / 3 })))).toEqual([
      34, 33, 33,
    ]);
  });
});

describe('nominals beside the interval of a reading', () => {
  const catalogueRatios = [1.1, 1.2, 1.25, 1.3, 1.4, 1.56, 1.625, 1.72, 1.73, 1.76, 1.82, 1.85, 1.9, 2];

  test('are those that it holds, the nearest either side, and what the call has named; the others are counted', () => {
    const build = buildOf([0.571, 0.571], {
      arms: [stamped('1.57')],
      rockers: { soldAs: 1.6, planned: 1.75 },
      catalogueRatios,
    });
    // .571/.348 = 1.6408 ± .0165, two passes with the usual scatter: 1.625 and 1.65 lie inside.
    const nominals = assess(build).details.setUps[0]?.nominals;
    expect(nominals?.rows.map(({ ratio, named, inside }) => [ratio, named, inside])).toEqual([
      [1.57, 'mark', false],
      [1.6, 'sold-as', false],
      [1.625, undefined, true],
      [1.65, undefined, true],
      [1.7, undefined, false],
      [1.75, 'planned', false],
    ]);
    // Nine of the trade's list, fourteen of the catalogue, the mark; six are shown.
    expect(nominals?.others).toBe(9 + 14 + 1 - 6);
  });
});

describe('a slip of a digit', () => {
  const slips = (readAs: (value: number) => string) => {
    const passes = passesOf('valve-lift', [0.516, 0.561, 0.561]).map((pass) => ({
      ...pass,
      readAs: readAs(pass.value),
    }));
    const build = buildOf([], {
      card: { intake: lobe(0.35), exhaust: lobe(0.35) },
      setUps: [cleanSetUp],
      passes,
    });
    return assess(build).questions.filter(({ code }) => code === 'digits-swapped');
  };

  test('is asked in the digits that were typed, and not where they were millimetres', () => {
    expect(slips((value) => `${value / 0.0254} in`)).toHaveLength(1);
    expect(slips((value) => `${value * 1000} mm`)).toEqual([]);
  });
});

describe('a question that only the inference raises', () => {
  const build = buildOf([0.577, 0.5765, 0.577], {
    card: { intake: lobe(0.35), exhaust: lobe(0.35) },
    setUps: [cleanSetUp],
  });
  const raised = assess(build).questions.find(({ code }) => code === 'zero-moved');
  const answeredWith = (found: boolean) =>
    assess({
      ...build,
      answers: [
        {
          id: 'a',
          line: 9,
          code: 'zero-moved',
          question: raised?.ask ?? '',
          questionId: raised?.id ?? 'none was asked',
          answer: found ? 'found' : 'not found',
          found,
        },
      ],
    });
  const heard = ({ explanations }: ReturnType<typeof assess>) =>
    (explanations[0]?.result?.explanations ?? []).map(({ needs }) => needs).join(' ');

  test('is asked, and what it asks about is listed', () => {
    expect(raised?.ask).toBe('Could the zero have moved by about .013 in?');
    expect(heard(assess(build))).toContain('the zero moved by about .013 in');
  });

  test('looked at and not so: it stays with its answer, is listed no more, and is said not to fit', () => {
    const after = answeredWith(false);
    expect(after.questions.find(({ id }) => id === raised?.id)?.answered?.found).toBe(false);
    expect(heard(after)).not.toContain('the zero moved');
    expect(after.explanations[0]?.summary).toContain('Looked at, and it does not fit: a zero that moved.');
    const [one, other] = [assess(build), after].map(
      ({ explanations }) => explanations[0]?.result?.noMistake ?? 0,
    );
    expect(other ?? 0).toBeGreaterThan(one ?? 1);
  });

  test('found to be so: no word stands, no figure is calculated from it, and it is entered again', () => {
    const after = answeredWith(true);
    const mark = after.judgements.find(({ against }) => against.to === 'mark');
    expect(mark?.word).toBeUndefined();
    expect(mark?.sentence).toContain(
      'First: passes 1, 2 and 3 entered again or struck out: asked “Could the zero',
    );
    expect(after.details.change.map((each) => each.after?.from)).not.toContain('measured');
  });
});

describe('a running spring that takes nothing', () => {
  test('is said so, and not as less than nothing', () => {
    const running = { ...cleanSetUp, id: 'set-up-2', number: 2, spring: 'running' as const };
    const build = buildOf([], {
      setUps: [cleanSetUp, running],
      passes: [
        ...passesOf('valve-lift', [0.557, 0.557]),
        ...passesOf('valve-lift', [0.5575, 0.5575], { setUpId: running.id }),
      ],
    });
    const told = assess(build).judgements.find(({ against }) => against.to === 'usual-deflection');
    expect(told?.sentence).toContain(
      'The running spring takes nothing off the lift that this indicator tells',
    );
  });
});
