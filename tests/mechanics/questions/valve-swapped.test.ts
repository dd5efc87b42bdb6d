import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { valveSwapped } from '../../../server/mechanics/questions/valve-swapped.ts';
import { readCleanly, trueEngine, withLobeRead } from './engine.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

describe('the other valve of the cylinder', () => {
  it.each([
    ['the other lobe', 0.33, 0.33, 'strong'],
    ['.003 from the other', 0.333, 0.33, 'strong'],
    ['.0035 from the other', 0.3335, 0.33, 'quiet'],
    ['.006 from its own', 0.344, 0.344, 'weak'],
    ['.0065 from its own', 0.3435, 0.3435, 'strong'],
    ['its own', 0.35, 0.33, 'quiet'],
    ['lobes .003 apart: cannot tell', 0.347, 0.347, 'quiet'],
    ['lobes alike: cannot tell', 0.33, 0.35, 'quiet'],
  ])('%s', (_, read, otherCardLobeLift, weight) => {
    const given = { ...plain, otherCardLobeLift, lobePasses: lobe(read), valvePasses: [] };
    expect(weightOf(valveSwapped, given)).toBe(weight);
  });

  it('is hinted at by the valve where the lobe was not read', () => {
    const given = { ...fromCard, otherCardLobeLift: 0.32, valvePasses: valve(0.512) };
    expect(first(valveSwapped, given)).toMatchObject({
      weight: 'weak',
      size: '.512 in is near the .512 in of the other lobe; this one makes .560 in.',
    });
    expect(weightOf(valveSwapped, { ...given, valvePasses: valve(0.5205) })).toBe('quiet');
  });

  it('is asked about strongly on every engine read so whose lobes differ, and of no true one', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        expect(weightOf(valveSwapped, readCleanly(engine))).toBe('quiet');
        const swapped = withLobeRead(engine, engine.otherCardLobe);
        const apart = Math.abs(engine.cardLobe - engine.otherCardLobe);
        if (apart > 0.0075) expect(weightOf(valveSwapped, swapped)).toBe('strong');
        if (apart === 0) expect(weightOf(valveSwapped, swapped)).toBe('quiet');
      }),
    );
  });
});

describe('a lift of .460 against .560', () => {
  const read = { ...fromCard, valvePasses: valve(0.46) };
  const codes = (otherCardLobeLift: number) =>
    questionsFor({ ...read, otherCardLobeLift }).map((question) => question.code);

  it('suggests a turn: common practice, no source', () => {
    expect(codes(0.33)).toEqual(['turn-miscounted']);
  });

  it('lists the smaller lobe as well where it fits: common practice, no source', () => {
    expect(codes(0.2875)).toEqual(['turn-miscounted', 'valve-swapped']);
  });
});
