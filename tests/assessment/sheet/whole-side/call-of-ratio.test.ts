import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import type { ValveName } from '../../../../shared/schemas/words.ts';
import { stamped } from '../../../mechanics/assessment/plain.ts';
import { PLAIN } from '../../../mechanics/assessment/plain-build.ts';
import { answer, headlines, on, SCATTER, sides } from './sides.ts';

describe('a call about the ratio with the whole sheet read', () => {
  const verify = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence =>
    on(sheet, { call: { ...PLAIN.call, goal: 'verify-ratio' }, ...more });

  test('all off alike: what settles it is next, before a mark is read, with marks and without', () => {
    expect(assess(verify(sides(1.5))).next).toMatchObject({ action: 'side-off' });
    const arms = SCATTER.flatMap((_, at) =>
      (['intake', 'exhaust'] as const).map((valve) => ({ valve, at, id: `arm-${valve}-${at + 1}` })),
    );
    const marked = {
      arms: arms.map(({ id }) => stamped('1.6', id)),
      seats: arms.map(({ id, at, valve }) => ({ armId: id, cylinder: at + 1, valve })),
    };
    expect(assess(verify(sides(1.5), marked)).next).toMatchObject({ action: 'side-off' });
  });

  test('read wrong, as was answered: all of them again; read right: the marks', () => {
    const evidence = verify(sides(1.5));
    expect(assess(answer(evidence, 'side-off', 'set-up')).next).toMatchObject({ action: 'read-again' });
    expect(assess(answer(evidence, 'side-off', 'not found', false)).next).toMatchObject({ action: 'arm' });
  });

  test('level with what they are sold as: one valve in a set-up of its own, with what the sheet does not bear', () => {
    const named = {
      arms: [stamped('1.6', 'arm-1')],
      seats: [{ armId: 'arm-1', cylinder: 1, valve: 'intake' as ValveName }],
    };
    expect(assess(verify(sides(1.6), named)).next?.sentence).toMatch(
      /^Take the lash of one valve of the sheet up to zero, on a light spring/,
    );
    const running = sides(1.53).map((each) => ({ ...each, spring: 'running' as const }));
    expect(assess(verify(running, named)).next?.sentence).toMatch(
      /^Put a light spring on one valve of the sheet/,
    );
  });

  test('the lash of the card makes it on both sides: it is told and taken up first', () => {
    const card = {
      assumedRatio: 1.6,
      intake: { lobeLift: 0.35 * IN, lash: 0.018 * IN },
      exhaust: { lobeLift: 0.345 * IN, lash: 0.018 * IN },
    };
    const sheet = sides(1.6).map((each) =>
      each.kind === 'valve-lift'
        ? { ...each, reading: { value: (each.reading.value ?? 0) - 0.018 * IN } }
        : each,
    );
    const { next, headlines: said } = assess(verify(sheet, { card }));
    expect(said[0]?.sentence).toMatch(/First: one of them again at zero lash/);
    expect(next?.sentence).toMatch(/^Take the lash of one of them up to zero/);
  });

  test('nothing stamped, nothing sold: a name on its condition, without a chance; held to be something, none', () => {
    const { soldAs: _, ...rockers } = PLAIN.rockers;
    const bare = { rockers, arms: [], seats: [] };
    // 1.610 ± what arms of one name spread by: 1.6 is the nearest of a list in steps of .05.
    expect(headlines(on(sides(1.61), bare))[0]).toMatch(
      /Their middle ratio is 1\.610: with the lash out, a set of 1\.6 arms\./,
    );
    // Half way between two names neither is told alone.
    expect(headlines(on(sides(1.62), bare))[0]).toMatch(
      /with the lash out, a set (of 1\.6 arms, or of 1\.65 arms|of 1\.65 arms, or of 1\.6 arms); the part number tells which/,
    );
    expect(headlines(on(sides(1.61)))[0]).not.toMatch(/a set of/);
    const running = sides(1.61).map((each) => ({ ...each, spring: 'running' as const }));
    expect(headlines(on(running, bare))[0]).not.toMatch(/a set of/);
    const sinking = sides(1.61).map((each) => ({ ...each, lifter: 'hydraulic' as const }));
    expect(headlines(on(sinking, bare))[0]).toMatch(
      /1\.610\. Not their ratio yet: a hydraulic lifter that sinks reads low\./,
    );
    // Nobody said which lifters with the readings: they are the engine's, and no lash is asked of those.
    const unsaid = sides(1.61).map((each) => ({ ...each, lifter: 'not-said' as const }));
    const engine = { ...PLAIN.engine, lifter: 'hydraulic-flat' as const };
    const [said] = headlines(on(unsaid, { ...bare, engine }));
    expect(said).toMatch(/1\.610\. Not their ratio yet: a hydraulic lifter that sinks reads low\./);
    expect(said).not.toContain('lash');
  });
});
