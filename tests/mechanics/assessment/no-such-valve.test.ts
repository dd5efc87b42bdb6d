import { describe, expect, test } from 'vitest';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { noSuchValves } from '../../../server/mechanics/assessment/gear/no-such-valve.ts';
import { settingDetail } from '../../../server/mechanics/assessment/lash/setting.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read, SET_UP } from './plain-build.ts';

const lash = (
  cylinder: number,
  valve: LashEvidence['valve'],
  more: Partial<LashEvidence> = {},
): LashEvidence => ({
  id: `lash-${cylinder}-${valve}`,
  line: 1,
  standing: true,
  cylinder,
  valve,
  gap: { value: 0.018 * IN },
  readAs: '',
  moment: 'found',
  engine: 'cold',
  nut: 'not-looked',
  day: '2026-03-01',
  ...more,
});
const on = (more: Partial<Evidence>) => noSuchValves({ ...PLAIN, ...more });
const about = (more: Partial<Evidence>) =>
  on(more).map((each) =>
    each.about.of === 'valve' ? `${each.about.cylinder} ${each.about.valve}` : each.about.of,
  );

describe('an entry of a valve that the engine on record does not have', () => {
  test('past the last cylinder, or the second of a kind where there is one: asked once for each valve', () => {
    expect(about({ lash: [lash(8, 'exhaust'), lash(9, 'exhaust'), lash(2, 'intake-2')] })).toEqual([
      '2 intake-2',
      '9 exhaust',
    ]);
    expect(about({ lash: [lash(9, 'exhaust')], sheet: [read(9, 'exhaust', 'valve-lift', 0.5)] })).toEqual([
      '9 exhaust',
    ]);
  });

  test('why it can’t be is said by what is on record', () => {
    expect(on({ lash: [lash(9, 'exhaust')] })[0]?.ask).toMatch(/^Cylinder 9, exhaust, .*cylinders 1 to 8\./);
    expect(on({ lash: [lash(2, 'intake-2')] })[0]?.ask).toMatch(
      /^Cylinder 2, intake 2, .*one intake valve\./,
    );
    const two = { ...PLAIN.engine, exhaustValves: 2, intakeValves: 2 };
    expect(on({ engine: two, lash: [lash(2, 'exhaust-3')] })[0]?.ask).toContain('2 exhaust valves');
    expect(on({ engine: two, lash: [lash(2, 'intake-2'), lash(2, 'exhaust-2')] })).toEqual([]);
  });

  test('how many cylinders there are is not known: none is too many', () => {
    const { cylinders: _, ...engine } = PLAIN.engine;
    expect(on({ engine, lash: [lash(12, 'exhaust')] })).toEqual([]);
  });

  test('what was struck out is not asked about', () => {
    expect(on({ lash: [lash(9, 'exhaust', { standing: false })] })).toEqual([]);
  });

  test('it is asked in the step of the entry, and rests on what stands', () => {
    const tip = { ...lash(9, 'intake'), id: 'tip', width: 0.05 * IN, side: 'centred' as const };
    const rows: [Partial<Evidence>, string, string[]][] = [
      [{ lash: [lash(9, 'intake')] }, 'adjuster', ['lash-9-intake']],
      [{ tipMarks: [tip] }, 'geometry', ['tip']],
      [{ lash: [lash(9, 'intake')], tipMarks: [tip] }, 'adjuster', ['lash-9-intake', 'tip']],
    ];
    for (const [more, step, restsOn] of rows) {
      const [question] = on(more);
      expect(question).toMatchObject({ code: 'no-such-valve', step, weight: 'strong' });
      expect(question?.restsOn.toSorted()).toEqual(restsOn);
      expect(question?.answers.map(({ code }) => code)).toEqual(['found', 'not-found']);
    }
    const passes = [true, false].map((standing, at) => ({
      ...{ id: `pass-${at}`, line: at, setUpId: 'nine', kind: 'valve-lift' as const, standing },
      ...{ value: 0.56 * IN, readAs: '', pass: at + 1, counted: true },
    }));
    const [ratio] = on({ setUps: [{ ...SET_UP, id: 'nine', cylinder: 9 }], passes });
    expect(ratio).toMatchObject({ step: 'ratio', restsOn: ['pass-0'] });
  });
});

describe('where each valve is set (exhaust opening, intake closing: common practice, no published source)', () => {
  const setting = (engine: Evidence['engine']) => settingDetail({ ...PLAIN, engine });

  test('without a firing order the rule alone', () => {
    const none = setting({ cylinders: 8, lifter: 'solid-flat' });
    expect(none).toMatchObject({ lacks: ['the firing order'], rows: [] });
    expect(none.said).toHaveLength(1);
    expect(setting({ cylinders: 8, lifter: 'solid-flat', firingOrder: ' ' }).lacks).toEqual([
      'the firing order',
    ]);
    expect(setting({ cylinders: 8, lifter: 'hydraulic-flat' }).said[1]).toContain('bleed down');
  });

  test('an order that does not name each cylinder once is said back', () => {
    const wrong = setting({ cylinders: 8, firingOrder: '1-2-3' });
    expect(wrong.rows).toEqual([]);
    expect(wrong.lacks).toEqual(['a firing order that names each cylinder once']);
    expect(wrong.said.join(' ')).toMatch(/“1-2-3” does not name each of the 8 cylinders once/);
    const unknown = setting({ firingOrder: '1-1-2', lifter: 'hydraulic-flat' });
    expect(unknown.said.join(' ')).toMatch(/bleed down.*does not name each cylinder once/);
  });

  test.each([
    [8, '1-8-4-3-6-5-7-2'],
    [6, '1-5-3-6-2-4'],
    [4, '1-3-4-2'],
    [3, '1-3-2'],
  ])(
    '%d cylinders go in steps of two turns over their count, in the order they fire',
    (count, firingOrder) => {
      const { rows, said, twoPositions } = setting({ cylinders: count, firingOrder, lifter: 'solid-flat' });
      expect(rows.map(({ cylinder }) => cylinder).join('-')).toBe(firingOrder);
      rows.forEach(({ setIntakeAt, setExhaustAt }, at) => {
        for (const [angle, first] of [
          [setIntakeAt, rows[0]?.setIntakeAt ?? Number.NaN],
          [setExhaustAt, rows[0]?.setExhaustAt ?? Number.NaN],
        ] as const) {
          expect(angle).toBe((first + (at * 720) / count) % 720);
          expect(angle).toBeGreaterThanOrEqual(0);
          expect(first % 10).toBe(0);
        }
      });
      expect(said[0]).toContain('Exhaust opening, intake closing');
      expect(said[1]).toContain('after 1 fired');
      expect(twoPositions === undefined).toBe(count === 3);
      if (count === 3) expect(said.at(-1)).toContain('even count');
      else expect(said.at(-1)).toContain(`every ${720 / count}°`);
    },
  );
});
