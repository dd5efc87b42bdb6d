import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { IN, MM } from '../../../../server/mechanics/kit/si.ts';
import type { ValveName } from '../../../../shared/schemas/words.ts';
import { stamped } from '../../../mechanics/assessment/plain.ts';
import { read } from '../../../mechanics/assessment/plain-build.ts';
import { codes, headlines, on, sides } from './sides.ts';

describe('slips of one reading that others speak against', () => {
  test('.506 among seven of .503 to .505 is no .560 with its digits swapped', () => {
    const lifts = [0.504, 0.505, 0.503, 0.504, 0.505, 0.503, 0.506, 0.504];
    const sheet = lifts.flatMap((lift, at) => [
      read(at + 1, 'intake', 'lobe-lift', 0.35),
      read(at + 1, 'intake', 'valve-lift', lift),
    ]);
    expect(codes(on(sheet))).toEqual(['side-off']);
  });

  test('alone it is asked, as before', () => {
    const sheet = sides(1.6).map((each) =>
      each.cylinder === 7 && each.valve === 'intake' && each.kind === 'valve-lift'
        ? { ...each, reading: { value: 0.506 * IN } }
        : each,
    );
    expect(codes(on(sheet))).toContain('digits-swapped');
  });

  test('the same arm reads so on another valve: the swap is told', () => {
    const arms = [5, 7].map((cylinder) => stamped('1.6', `arm-${cylinder}`));
    const usual = sides(1.61).filter(
      ({ cylinder, valve, kind }) =>
        !(kind === 'valve-lift' && valve === 'intake' && (cylinder === 5 || cylinder === 7)),
    );
    const lift = (cylinder: number, value: number, armId: string) =>
      read(cylinder, 'intake', 'valve-lift', value, { armId });
    const evidence = on(
      [
        ...usual,
        lift(5, 0.525, 'arm-5'),
        lift(5, 0.525, 'arm-5'),
        lift(7, 0.563, 'arm-7'),
        lift(7, 0.526, 'arm-5'),
        lift(5, 0.563, 'arm-7'),
      ],
      {
        arms,
        seats: [
          { armId: 'arm-5', cylinder: 7, valve: 'intake' as ValveName },
          { armId: 'arm-7', cylinder: 5, valve: 'intake' as ValveName },
        ],
      },
    );
    expect(codes(evidence)).not.toContain('digits-swapped');
    expect(codes(evidence)).not.toContain('hand-read-backwards');
    expect(headlines(evidence).join('\n')).toMatch(/It is the part: 5\./);
  });

  test('millimetres come off a millimetre dial: 13.78 among 14.30 is no inch hand read backwards', () => {
    const metric = sides(1.61).map((each) => {
      const own =
        each.cylinder === 5 && each.valve === 'intake' && each.kind === 'valve-lift' ? 13.78 * MM : undefined;
      const value = own ?? each.reading.value ?? 0;
      return { ...each, reading: { value }, readAs: `${(value / MM).toFixed(2)} mm` };
    });
    expect(codes(on(metric))).toEqual([]);
    expect(headlines(on(metric))[0]).toMatch(/5 intake is the odd one/);
  });
});

describe('what no dial read', () => {
  test('a rule tells no valve from another: that is said, and a dial is next', () => {
    const ruled = sides(1.6).map((each) => ({ ...each, tool: 'rule' as const }));
    const { headlines: said, next } = assess(on(ruled));
    expect(said[0]?.sentence).toMatch(/read with a rule, .* First: the same lifts with a dial indicator\./);
    expect(next).toMatchObject({ action: 'read-with-indicator' });
  });

  test('a caliper has no hand to read backwards, nor turns to miss', () => {
    // .540 among .560: backwards on a dial of .100; .460: a turn.
    for (const lift of [0.54, 0.46]) {
      const sheet = sides(1.6).map((each) =>
        each.cylinder === 5 && each.valve === 'intake' && each.kind === 'valve-lift'
          ? { ...each, reading: { value: lift * IN } }
          : each,
      );
      const calipered = sheet.map((each) =>
        each.kind === 'valve-lift' ? { ...each, tool: 'caliper' as const } : each,
      );
      expect(codes(on(sheet)).length).toBeGreaterThan(0);
      expect(codes(on(calipered))).not.toContain('hand-read-backwards');
      expect(codes(on(calipered))).not.toContain('turn-miscounted');
    }
  });
});
