import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { statedNotRead } from '../../../server/mechanics/questions/stated-not-read.ts';
import { readCleanly, trueEngine } from './engine.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

const sum = (statedValveLift: number) => ({ ...plain, statedValveLift });

describe('a number used', () => {
  it('that no pass gave is asked for: passes .847, sum .842', () => {
    const given = {
      ...plain,
      cardLobeLift: 0.482,
      otherCardLobeLift: 0.471,
      cardRatio: 1.75,
      nominalRatio: 1.75,
      lobePasses: lobe(0.482),
      valvePasses: valve(0.847, 0.847, 0.847),
      statedValveLift: 0.842,
      pushedIn: 0.95,
    };
    expect(questionsFor(given)).toEqual([
      {
        code: 'stated-not-read',
        weight: 'strong',
        ask: 'Where does .842 in come from? The passes say .847 in.',
        size: '.005 in more would make it .847 in, a ratio of 1.757.',
        test: 'Read the passes out again, and calculate with what was read.',
        restsOn: ['valve1', 'valve2', 'valve3'],
      },
    ]);
  });

  it.each([
    ['.0035 under', 0.5565, 'strong'],
    ['.003 under', 0.557, 'weak'],
    ['.0011 over', 0.5611, 'weak'],
    ['.001 over', 0.561, 'quiet'],
    ['the number read', 0.56, 'quiet'],
    ['ten times it: a matter of the point', 5.6, 'quiet'],
  ])('%s', (_, stated, weight) => {
    expect(weightOf(statedNotRead, sum(stated))).toBe(weight);
  });

  it('between the passes is one of them', () => {
    expect(weightOf(statedNotRead, { ...sum(0.556), valvePasses: valve(0.552, 0.56) })).toBe('quiet');
    expect(first(statedNotRead, { ...sum(0.566), valvePasses: valve(0.552, 0.56) }).ask).toContain(
      '.552 in to .560 in',
    );
  });

  it('for the lobe is set against its passes or the card', () => {
    expect(first(statedNotRead, { ...plain, statedLobeLift: 0.34 }).restsOn).toEqual([
      'lobe1',
      'lobe2',
      'lobe3',
    ]);
    expect(first(statedNotRead, { ...fromCard, statedLobeLift: 0.34 }).ask).toContain(
      'The card says .350 in.',
    );
  });

  it('with no passes cannot be set against anything', () => {
    expect(weightOf(statedNotRead, { ...sum(0.5), valvePasses: [] })).toBe('quiet');
  });

  it('other than the one read is asked about strongly on every engine, the one read on none', () => {
    fc.assert(
      fc.property(trueEngine, fc.integer({ min: 5, max: 60 }), fc.constantFrom(1, -1), (engine, off, way) => {
        const clean = readCleanly(engine);
        const lifts = clean.valvePasses.map((each) => each.lift);
        const end = way > 0 ? Math.max(...lifts) : Math.min(...lifts);
        const stated = end + (way * off) / 1000;
        expect(weightOf(statedNotRead, { ...clean, statedValveLift: stated })).toBe('strong');
        expect(weightOf(statedNotRead, { ...clean, statedValveLift: end })).toBe('quiet');
      }),
    );
  });
});
