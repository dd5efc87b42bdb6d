import { describe, expect, test } from 'vitest';
import { adjustersWord } from '../../../server/mechanics/consequences/adjusters.ts';
import { assumptionsOf } from '../../../server/mechanics/consequences/assumptions.ts';
import { cautionsOf, shortCaution, studCautions } from '../../../server/mechanics/consequences/cautions.ts';
import type { ConsequenceInput } from '../../../server/mechanics/consequences/types.ts';
import { LBF } from '../../../server/mechanics/kit/si.ts';
import { CASE } from './case.ts';

function expectSaid(told: readonly string[], parts: readonly string[]): void {
  expect(told, parts.join(' | ')).toHaveLength(parts.length);
  parts.forEach((part, index) => {
    expect(told[index]).toContain(part);
  });
}

describe('what the figures rest on', () => {
  const { lash: _lash, ...noLash } = CASE;
  const bare: ConsequenceInput = { ...CASE, spring: {} };
  const FOUR = ['clear only when all of its interval', 'piston to valve', 'heights', 'within 2 degrees'];

  test('the train alone where nothing is calculated and no spring is known', () => {
    expectSaid(assumptionsOf(bare, false), ['nothing in the train bends']);
  });

  test('gaps that are calculated bring four more', () => {
    expectSaid(assumptionsOf(bare, true), ['nothing in the train bends', ...FOUR]);
  });

  test('a coil-bind height is one spring’s; a seat load is as good as ten per cent, common practice', () => {
    expectSaid(assumptionsOf(CASE, true), ['bends', ...FOUR, 'of a nest each spring', 'good to 10 % of']);
    expectSaid(assumptionsOf({ ...bare, spring: { solidHeight: 0.03 } }, false), ['bends', 'of a nest']);
    expectSaid(assumptionsOf({ ...bare, spring: { seatLoad: 500 } }, false), ['bends', 'loads are taken']);
  });

  test('no lash is said where none is known and the lift does not carry it', () => {
    const given = { ...noLash, spring: {} };
    const after = { value: 1.6, halfWidth: 0.01, spring: 'light' } as const;
    const { after: _after, ...noRatio } = given;
    const { lifter: _lifter, ...noLifter } = given;
    for (const each of [given, noRatio, noLifter, { ...given, after: { ...after, lashIn: false } }]) {
      expectSaid(assumptionsOf(each, false), ['bends', 'no lash, since none is known']);
    }
    for (const each of [
      { ...given, lash: 0.0004 },
      { ...given, lifter: 'hydraulic' as const },
      { ...given, after: { ...after, lashIn: true } },
    ]) {
      expectSaid(assumptionsOf(each, false), ['bends']);
    }
  });
});

describe('what is said with every change', () => {
  test('three cautions, one more with a gap that is short, one more with a stud', () => {
    expectSaid(cautionsOf([], false), ['crank bolt', '', '']);
    expectSaid(cautionsOf([], true), [shortCaution, 'crank bolt', '', '']);
    const stud = { mounting: 'stud', size: '3/8', openLoad: 336 * LBF } as const;
    expectSaid(cautionsOf(studCautions(stud), true), [shortCaution, '3/8 studs', 'crank bolt', '', '']);
  });

  test('a stud from 300 lb on, that very load too; nothing where no load is known', () => {
    expect(studCautions({ mounting: 'stud', size: '3/8', openLoad: 300 * LBF })).toHaveLength(1);
    expect(studCautions({ mounting: 'stud', size: '3/8' })).toEqual([]);
    expect(studCautions({ size: '3/8', openLoad: 900 * LBF })).toEqual([]);
  });
});

describe('what a turn of the adjuster does', () => {
  const turn = (input: ConsequenceInput | readonly ConsequenceInput[]) =>
    adjustersWord([input].flat(), false);
  const ratio = (value: number) => ({ value, halfWidth: 0, spring: 'light' as const });

  test('nothing is told of a pedestal, of a mounting nobody named, or without a ratio after', () => {
    const { mounting: _mounting, ...noMounting } = CASE;
    const { after: _after, ...noRatio } = CASE;
    for (const input of [{ ...CASE, mounting: 'pedestal' } as const, noMounting, noRatio]) {
      expect(turn(input)).toBe('');
    }
    expect(adjustersWord([], false)).toBe('');
  });

  test('a hydraulic one: the plunger goes 1 + 1/r pitches under a nut, one under a screw, kinematics', () => {
    const hydraulic = { ...CASE, lifter: 'hydraulic' } as const;
    expect(turn(hydraulic)).toBe(
      'One turn of the nut pushes the lifter’s plunger in by 1.63 pitches of its thread instead of 1.67.',
    );
    expect(turn({ ...hydraulic, mounting: 'shaft' })).toBe(
      'One turn of a screw over the pushrod pushes the lifter’s plunger in by one pitch of its thread.',
    );
  });

  test('without the ratio before there is nothing to be instead of', () => {
    const { before: _before, ...noCard } = CASE;
    expect(turn(noCard)).toBe(
      'One turn of the nut moves the gap at the valve by 2.60 pitches of its thread.',
    );
  });

  test('of three valves the least and the most', () => {
    const three = [1.62, 1.6, 1.61].map((value) => ({ ...CASE, after: ratio(value) }));
    expect(turn(three)).toContain('by 2.60 to 2.62 pitches');
  });

  test('what is set again is named by its lifter', () => {
    const { lifter: _lifter, ...noLifter } = CASE;
    const what = (input: ConsequenceInput) => /: the (.*) it had/.exec(adjustersWord([input], true))?.[1];
    expect(what(CASE)).toBe('lash');
    expect(what({ ...CASE, lifter: 'hydraulic' })).toBe('preload');
    expect(what(noLifter)).toBe('lash or preload');
    expect(adjustersWord([], true)).toContain('the lash or preload it had');
  });
});
