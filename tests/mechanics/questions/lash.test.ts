import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lashFormula } from '../../../server/mechanics/questions/lash-formula.ts';
import { lashLeftIn } from '../../../server/mechanics/questions/lash-left-in.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { liftOf, readCleanly, trueEngine, withValveLift } from './engine.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

const unsaid: QuestionInput = { ...fromCard, lash: 'not-said' };
const net = (lift: number, input = unsaid) => ({ ...input, valvePasses: valve(lift) });

describe('lash left in the lift', () => {
  it.each([
    ['short by the .016', net(0.544), 'strong'],
    ['.003 more than that', net(0.541), 'strong'],
    ['.0035 more than that', net(0.5405), 'weak'],
    ['.006 less than that', net(0.55), 'weak'],
    ['.0065 less than that', net(0.5505), 'quiet'],
    ['not short', net(0.56), 'quiet'],
    [
      'short on a running spring, where flex is missing too',
      net(0.544, { ...unsaid, spring: 'running' }),
      'weak',
    ],
    ['short by just that where zero lash was said: asked once more', net(0.544, fromCard), 'strong'],
    ['short by nearly that where zero lash was said', net(0.5405, fromCard), 'quiet'],
    [
      'over a lobe that was read nothing is missing: the card’s lobe is the odd one',
      { ...net(0.544), lobePasses: lobe(0.34) },
      'weak',
    ],
    ['short by what the log has', net(0.538, { ...unsaid, otherLashes: [0.022] }), 'strong'],
    ['short on a hydraulic lifter', net(0.544, { ...unsaid, lifter: 'hydraulic' }), 'quiet'],
    ['set, and how much was not said', net(0.544, { ...unsaid, lash: 'set' }), 'weak'],
    [
      'set, its size said: nobody asks whether it was left in',
      net(0.54, { ...unsaid, lash: 'set', lashSetting: 0.02 }),
      'quiet',
    ],
  ])('%s', (_, given, weight) => {
    expect(weightOf(lashLeftIn, given)).toBe(weight);
  });

  it('says what it would make', () => {
    expect(first(lashLeftIn, net(0.544)).size).toBe('.016 in more would make it .560 in, a ratio of 1.600.');
  });

  it('asks for its size where it was set and not said, also where the card has a lash', () => {
    const { cardLash: _, ...rest } = unsaid;
    expect(first(lashLeftIn, { ...rest, lash: 'set' }).ask).toMatch(/^How much lash/);
    expect(first(lashLeftIn, net(0.544, { ...unsaid, lash: 'set' })).code).toBe('lash-setting-not-said');
    expect(weightOf(lashLeftIn, rest)).toBe('quiet');
  });

  it('is asked about strongly on nearly every engine read so, weakly on all, and of no true one', () => {
    const engines = fc.sample(trueEngine, { numRuns: 1000, seed: 3 });
    const asked = engines.map((engine) =>
      weightOf(lashLeftIn, { ...withValveLift(engine, liftOf(engine) - engine.lash), lash: 'not-said' }),
    );
    expect(asked).not.toContain('quiet');
    expect(asked.filter((weight) => weight === 'strong').length / 1000).toBeGreaterThan(0.95);
    expect(engines.every((engine) => weightOf(lashLeftIn, readCleanly(engine)) === 'quiet')).toBe(true);
  });
});

describe('lash taken off the lobe', () => {
  const sum = (lift: number): QuestionInput => ({ ...plain, valvePasses: [], statedValveLift: lift });
  it.each([
    ['(.350 less .016) times 1.6', 0.5344, 'strong'],
    ['written to three places', 0.534, 'strong'],
    ['.0006 off it', 0.5338, 'strong'],
    ['.0007 off it', 0.5337, 'weak'],
    ['.002 off it', 0.5324, 'weak'],
    ['.0025 off it', 0.5319, 'quiet'],
    ['.350 times 1.6 less .016', 0.544, 'quiet'],
    ['.350 times 1.6', 0.56, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(lashFormula, sum(lift))).toBe(weight);
  });

  it('is seen on the card, and says what is right', () => {
    const question = first(lashFormula, { ...plain, cardValveLift: 0.5344 });
    expect(question.ask).toContain('valve lift on the card, .534 in');
    expect(question.size).toBe('Taken off at the valve it makes .544 in.');
  });

  it('is not asked of a lift on the card that is its lobe times its own ratio, whatever arm is on', () => {
    // .310 × 1.5 = .465; (.310 − .020) × 1.6 comes near it by chance.
    const card = { cardLobeLift: 0.31, cardValveLift: 0.465, cardLash: 0.02, cardRatio: 1.5 };
    const bare = { ...plain, valvePasses: [], lobePasses: [], nominalRatio: 1.6, ...card };
    expect(weightOf(lashFormula, bare)).toBe('quiet');
    expect(weightOf(lashFormula, { ...bare, cardValveLift: (0.31 - 0.02) * 1.5 })).not.toBe('quiet');
  });

  it('is not asked of a number that a pass gave', () => {
    expect(weightOf(lashFormula, { ...plain, valvePasses: valve(0.5344), statedValveLift: 0.5344 })).toBe(
      'quiet',
    );
  });

  it('is asked about strongly in every sum made so, and in none made rightly', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        const given = { ...readCleanly(engine), valvePasses: [], lobePasses: [] };
        const wrong = (engine.cardLobe - engine.lash) * engine.nominal;
        const right = engine.cardLobe * engine.nominal - engine.lash;
        expect(weightOf(lashFormula, { ...given, statedValveLift: wrong })).toBe('strong');
        expect(weightOf(lashFormula, { ...given, statedValveLift: right })).toBe('quiet');
      }),
    );
  });
});
