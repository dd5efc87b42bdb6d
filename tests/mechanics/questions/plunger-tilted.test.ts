import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notSaid } from '../../../server/mechanics/questions/not-said.ts';
import { plungerTilted } from '../../../server/mechanics/questions/plunger-tilted.ts';
import { defaultTolerances } from '../../../server/mechanics/questions/tolerances.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { liftOf, readCleanly, trueEngine, withValveLift } from './engine.ts';
import { first, fromCard, valve, weightOf } from './plain.ts';

const cosine = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
const unsaid: QuestionInput = { ...fromCard, alignment: 'not-said' };
const leaning: QuestionInput = { ...fromCard, alignment: 'leaning' };
const long = (degrees: number, input: QuestionInput) => ({
  ...input,
  valvePasses: valve(0.56 / cosine(degrees)),
});
const short = (degrees: number, input: QuestionInput): QuestionInput => ({
  ...input,
  restsOn: 'valve-tip',
  valvePasses: valve(0.56 * cosine(degrees)),
});

describe('a leaning plunger', () => {
  it.each([
    ['that leans 5 deg', long(5.01, leaning), 'strong'],
    ['that leans 4.9 deg', long(4.9, leaning), 'weak'],
    ['that leans 15.4 deg', long(15.4, leaning), 'strong'],
    ['that leans, 15.6 deg by the figures', long(15.6, leaning), 'weak'],
    ['not spoken of, which is asked as that', long(10.01, unsaid), 'quiet'],
    ['said to be parallel', long(12, fromCard), 'quiet'],
    ['held in one spot, reading short', short(12, leaning), 'strong'],
    ['on a flat face, reading short', { ...short(12, unsaid), restsOn: 'retainer-flat' }, 'quiet'],
    [
      'held in one spot, reading short on a running spring',
      { ...short(12, unsaid), spring: 'running' },
      'quiet',
    ],
  ] as const)('%s', (_, given, weight) => {
    expect(weightOf(plungerTilted, given)).toBe(weight);
  });

  it('1.656 is a 1.6 at 15 deg, and lands on a 1.65: common practice, no source', () => {
    const given = { ...leaning, valvePasses: valve(1.656 * 0.35) };
    expect(first(plungerTilted, given).size).toBe(
      'A lean of about 15 deg makes 1.656 of 1.6; so does a 1.65 read upright.',
    );
  });

  it.each([
    ['10 deg', long(10.01, unsaid), 'strong'],
    ['9.9 deg', long(9.9, unsaid), 'weak'],
    ['15.4 deg', long(15.4, unsaid), 'strong'],
    ['15.6 deg', long(15.6, unsaid), 'weak'],
    ['held in one spot, reading short', short(12, unsaid), 'strong'],
    ['on a flat face, reading short', { ...short(12, unsaid), restsOn: 'retainer-flat' as const }, 'weak'],
  ] as const)('not spoken of, %s: how it stands is asked for once', (_, given, weight) => {
    const asked = notSaid(given, defaultTolerances).filter(({ code }) => code === 'alignment-not-said');
    expect(asked.map((each) => each.weight)).toEqual([weight]);
  });

  it('5, 10 and 15 deg are 0.4, 1.5 and 3.5 %: common practice, no source', () => {
    const percent = [5, 10, 15].map((degrees) => ((1 / cosine(degrees) - 1) * 100).toFixed(1));
    expect(percent).toEqual(['0.4', '1.5', '3.5']);
    expect(first(plungerTilted, { ...leaning, valvePasses: valve(0.56) }).size).toContain('1.5 %');
  });

  it('told as 12 deg, both ways of touching: .577 in is .564 or .590, cosine of 12 deg .9781 from a table', () => {
    // .577 × .9781 = .5644 and .577 ÷ .9781 = .5899, by hand.
    const told = { ...leaning, lean: (12 * Math.PI) / 180, valvePasses: valve(0.577) };
    const size = (restsOn: QuestionInput['restsOn']) => first(plungerTilted, { ...told, restsOn }).size;
    expect(size('not-said')).toBe(
      '12 deg makes .577 in of .564 in where the tip slides on a flat face, and of .590 in where it is held in one spot.',
    );
    expect(size('retainer-flat')).toBe(
      '12 deg makes .577 in of .564 in where the tip slides on a flat face.',
    );
    expect(size('valve-tip')).toBe('12 deg makes .577 in of .590 in where it is held in one spot.');
  });

  it('is asked about strongly on every engine that was said to lean 9 to 14 deg', () => {
    fc.assert(
      fc.property(trueEngine, fc.integer({ min: 9, max: 14 }), (engine, degrees) => {
        const read = withValveLift(engine, liftOf(engine) / cosine(degrees));
        expect(weightOf(plungerTilted, { ...read, alignment: 'leaning' })).toBe('strong');
        expect(weightOf(plungerTilted, { ...readCleanly(engine), alignment: 'not-said' })).toBe('quiet');
      }),
    );
  });
});
