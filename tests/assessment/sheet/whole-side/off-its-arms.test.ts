import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { stamped } from '../../../mechanics/assessment/plain.ts';
import { answer, codes, column, headlines, on, SCATTER, sides } from './sides.ts';

const words = (sentence: string): number => sentence.split(/\s+/).length;

describe('a whole side off what its arms are held to be', () => {
  test('all sixteen at 1.44, sold as 1.6: said and asked once, and no slip of one of them', () => {
    const evidence = on(sides(1.44));
    const [first = ''] = headlines(evidence);
    expect(first).toMatch(/^All 16 valves read alike, about 1\.440: 10 % under the 1\.6 they are sold as\./);
    expect(words(first)).toBeLessThanOrEqual(30);
    expect(codes(evidence)).toEqual(['side-off']);
    expect(assess(evidence).next).toMatchObject({ action: 'side-off' });
  });

  test.each([
    [1.513, 'stamped', /5 % under the 1\.6 stamped on them/],
    [1.55, 'sold', /3 % under the 1\.6 they are sold as/],
    [1.72, 'sold', /(7|8) % over the 1\.6 they are sold as/],
    [1.4, 'sold', /(12|13) % under the 1\.6/],
  ])('all at %s, %s as 1.6', (ratio, how, said) => {
    const arms = SCATTER.flatMap((_, at) =>
      (['intake', 'exhaust'] as const).map((valve) => ({ valve, at, id: `arm-${valve}-${at + 1}` })),
    );
    const marked =
      how === 'sold'
        ? {}
        : {
            arms: arms.map(({ id }) => stamped('1.6', id)),
            seats: arms.map(({ id, at, valve }) => ({ armId: id, cylinder: at + 1, valve })),
          };
    const evidence = on(sides(ratio), marked);
    expect(headlines(evidence).join('\n')).toMatch(said);
    const slips = assess(evidence).questions.filter(({ about }) => about.of === 'valve');
    expect(slips.map(({ code }) => code)).toEqual([]);
    const doubted = assess(evidence).judgements.filter(({ id }) => id.startsWith('odd:in-doubt'));
    expect(doubted).toEqual([]);
  });

  test('the card’s lash left in all of them is named: .016 of .560', () => {
    const lashed = on(
      (['intake', 'exhaust'] as const).flatMap((side) => [
        ...column(side, 'lobe-lift', (lobe) => lobe),
        ...column(side, 'valve-lift', (lobe, _, off) => lobe * 1.6 - 0.016 + off),
      ]),
      {
        card: {
          assumedRatio: 1.6,
          intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN },
          exhaust: { lobeLift: 0.345 * IN, lash: 0.016 * IN },
        },
      },
    );
    const question = assess(lashed).questions.find(({ code }) => code === 'side-off');
    expect(question?.size).toContain('lash of .016 in, left in, would make it');
  });

  test('looked at and read right: it is another set; read wrong: they are read again', () => {
    const evidence = on(sides(1.44));
    expect(headlines(answer(evidence, 'side-off', 'not found', false))[0]).toMatch(
      /not that set\. Look its number up/,
    );
    expect(headlines(answer(evidence, 'side-off', 'set-up'))[0]).toMatch(/another reading of them/);
  });

  test('one odd valve among a whole side that is off: both are said', () => {
    const sheet = sides(1.44).map((each) =>
      each.cylinder === 5 && each.valve === 'intake' && each.kind === 'valve-lift'
        ? { ...each, reading: { value: 0.484 * IN } }
        : each,
    );
    const said = headlines(on(sheet)).join('\n');
    expect(said).toMatch(/5 intake is the odd one/);
    expect(said).toMatch(/15 of the 16 valves read alike, about 1\.44/);
  });

  test('a running spring 3 % under is no fault of the set', () => {
    const running = sides(1.55).map((each) => ({ ...each, spring: 'running' as const }));
    expect(codes(on(running))).toEqual([]);
    expect(headlines(on(running))[0]).toMatch(
      /on the running spring is 1\.5\d\d; a loaded ratio is set against no mark/,
    );
  });

  test('a whole side a turn short stays one question, of the turn', () => {
    const sheet = sides(1.6).map((each) =>
      each.kind === 'valve-lift'
        ? { ...each, reading: { value: (each.reading.value ?? 0) - 0.1 * IN } }
        : each,
    );
    const found = assess(on(sheet)).questions.filter(({ code }) => code === 'turn-miscounted');
    expect(found.map(({ about }) => about)).toEqual([
      { of: 'side', valve: 'intake' },
      { of: 'side', valve: 'exhaust' },
    ]);
    expect(codes(on(sheet))).not.toContain('side-off');
  });
});

describe('lobes that all lie off the card', () => {
  test('.335 and .330 against .350 and .345: said and asked, once a side', () => {
    const evidence = on(sides(1.61, -0.015));
    expect(headlines(evidence).join('\n')).toMatch(
      /All 8 intake lobes read about \.335 in, \.015 in low against the card’s \.350 in\./,
    );
    expect(assess(evidence).questions.filter(({ code }) => code === 'lobes-off-card')).toHaveLength(2);
    expect(assess(evidence).stop).toEqual([]);
    expect(headlines(answer(evidence, 'lobes-off-card', 'other-card')).join('\n')).toMatch(
      /card is not this cam’s/,
    );
  });

  test('within what card and tool explain nothing is asked', () => {
    expect(codes(on(sides(1.61, -0.0015)))).toEqual([]);
  });
});
