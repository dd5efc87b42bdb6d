import { describe, expect, it } from 'vitest';
import { lifterSunk } from '../../../server/mechanics/questions/lifter-sunk.ts';
import { shortAtTop, stationsAreFull } from '../../../server/mechanics/questions/short-at-top.ts';
import { statedNotRead } from '../../../server/mechanics/questions/stated-not-read.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

/** Lifts part of the way up, each off what a 1.6 should move there by so much. Inches. */
const stations = (...off: readonly number[]) =>
  off.map((each, index) => {
    const atLobeLift = 0.05 * (index + 1);
    return { atLobeLift, lift: 1.6 * atLobeLift + each };
  });
const top = (lift: number, more: Partial<QuestionInput> = {}): QuestionInput => ({
  ...fromCard,
  valvePasses: valve(lift, lift),
  stations: stations(0, 0.001, -0.001),
  ...more,
});
const without = (input: QuestionInput, ...names: readonly (keyof QuestionInput)[]): QuestionInput => ({
  ...input,
  ...Object.fromEntries(names.map((name) => [name, undefined])),
});

describe('full part of the way up and short at the top', () => {
  it('says to where it was right, and by how much it is short: .560 is expected', () => {
    expect(first(shortAtTop, top(0.54))).toMatchObject({
      ask: 'It is right up to .150 in of lobe lift and .020 in short at the top. Did the indicator run out of travel?',
      restsOn: ['valve1', 'valve2'],
    });
  });

  it.each([
    ['short by .010, common practice', top(0.55), 'strong'],
    ['short by less', top(0.5502), 'quiet'],
    ['not short', top(0.56), 'quiet'],
    ['a lash was set: that much is missing all the way', top(0.54, { lash: 'set' }), 'quiet'],
    ['no ratio is known', without(top(0.54), 'nominalRatio'), 'quiet'],
    ['no lobe is known', without(top(0.54), 'cardLobeLift'), 'quiet'],
    ['no lift', top(0.54, { valvePasses: [] }), 'quiet'],
    ['nothing read on the way', top(0.54, { stations: [] }), 'quiet'],
    ['nothing said of the way', without(top(0.54), 'stations'), 'quiet'],
    ['short on the way as well', top(0.54, { stations: stations(-0.016, -0.016) }), 'quiet'],
  ])('%s', (_, input, wanted) => {
    expect(weightOf(shortAtTop, input)).toBe(wanted);
  });

  it.each([
    [[0.006], true],
    [[-0.006], true],
    [[0.0065], false],
    [[0.012, 0, 0.006], true],
    [[0.014, 0.002, 0.006], false],
    [[-0.02, 0.02], true],
  ])('stations off by %j: full %s, by their mean within .006', (off, full) => {
    expect(stationsAreFull({ ...plain, stations: stations(...off) })).toBe(full);
  });
});

describe('a lifter that may have sunk before the first pass', () => {
  const hydraulic = (lift: number, more: Partial<QuestionInput> = {}): QuestionInput => ({
    ...fromCard,
    lifter: 'hydraulic',
    valvePasses: valve(lift),
    ...more,
  });
  it.each([
    ['short by .010', hydraulic(0.55), 'strong'],
    ['by less', hydraulic(0.5502), 'quiet'],
    ['by .040, as much as any flex', hydraulic(0.5201), 'strong'],
    ['by more: something else', hydraulic(0.519), 'quiet'],
    ['on a running spring, which takes as much', hydraulic(0.55, { spring: 'running' }), 'quiet'],
    ['on a solid lifter', hydraulic(0.55, { lifter: 'solid' }), 'quiet'],
    ['with lash set', hydraulic(0.55, { lash: 'set' }), 'quiet'],
    ['stated, no pass', hydraulic(0.55, { valvePasses: [], statedValveLift: 0.55 }), 'quiet'],
    ['nothing expected', without(hydraulic(0.55), 'nominalRatio', 'cardRatio'), 'quiet'],
  ])('%s', (_, input, wanted) => {
    expect(weightOf(lifterSunk, input)).toBe(wanted);
  });

  it('rests on its passes and says by how much', () => {
    const asked = first(lifterSunk, hydraulic(0.54));
    expect(asked.size).toMatch(/^The lift is \.020 in short/);
    expect(asked.restsOn).toEqual(['valve1']);
  });
});

describe('a number that no pass gave, against the nearer end of the passes', () => {
  const stated = (lift: number): QuestionInput => ({
    ...plain,
    valvePasses: valve(0.55, 0.56),
    statedValveLift: lift,
  });
  it('under them the least, over them the most', () => {
    expect(first(statedNotRead, stated(0.5)).size).toMatch(/^\.050 in more would make it \.550 in/);
    expect(first(statedNotRead, stated(0.6)).size).toMatch(/^\.040 in less would make it \.560 in/);
    expect(weightOf(statedNotRead, stated(0.555))).toBe('quiet');
    expect(weightOf(statedNotRead, { ...plain, statedLobeLift: 0.35, lobePasses: lobe(0.35) })).toBe('quiet');
  });
});
