import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { placeOf } from '../../../../server/mechanics/assessment/common/said.ts';
import type { SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { rowsOf } from '../../../../server/mechanics/assessment/sheet/rows.ts';
import { unlikeSprings } from '../../../../server/mechanics/assessment/sheet/side-springs.ts';
import type { ValveName } from '../../../../shared/schemas/words.ts';
import { PLAIN, read } from '../../../mechanics/assessment/plain-build.ts';
import { headlines, on, sides } from './sides.ts';

describe('a clean sheet is an answer', () => {
  test('all sixteen at 1.610: no valve stands out, and how far it is from what they are sold as', () => {
    const evidence = on(sides(1.61));
    const [first = ''] = headlines(evidence);
    expect(first).toBe(
      'No valve stands out: all 16 lie within .001 in of the middle of their side. Their middle ratio is 1.610, 1 % over the 1.6 they are sold as. How the lash was is not said.',
    );
    expect(headlines(evidence).filter((said) => said.includes('stands out'))).toHaveLength(1);
    expect(assess(evidence).next?.sentence).toContain('No valve stands out');
  });

  test('3 % over is ordinary, and the measured figure is used', () => {
    expect(headlines(on(sides(1.65)))[0]).toMatch(/ordinary for arms made with room for flex\. Use 1\.650/);
  });

  test('intakes at 1.66 and exhausts at 1.61 of one set are told apart', () => {
    const said = headlines(on(sides({ intake: 1.66, exhaust: 1.61 })));
    expect(said.join('\n')).toMatch(/Intakes read 1\.660 and exhausts 1\.610, 3 % apart/);
    expect(headlines(on(sides({ intake: 1.61, exhaust: 1.6 }))).join('\n')).not.toMatch(/apart/);
  });
});

test('of a cylinder with two intakes each is named, where one was read on either spring', () => {
  const lift = (cylinder: number, valve: ValveName, spring: 'light' | 'running') =>
    read(cylinder, valve, 'valve-lift', 0.56, { spring });
  const sheet = [1, 2].flatMap((cylinder) => [
    lift(cylinder, 'intake', 'light'),
    lift(cylinder, 'intake-2', 'running'),
  ]);
  const engine = { ...PLAIN.engine, cylinders: 4, intakeValves: 2, exhaustValves: 2 };
  const [judgement] = unlikeSprings(rowsOf(on(sheet, { engine })));
  const [light, running] = ['intake', 'intake-2'].map((valve) =>
    sheet.filter((each) => each.valve === valve),
  );
  const named = (own: readonly SheetEvidence[] = []) => own.map(placeOf).join(' and ');
  expect(judgement?.sentence).toContain(
    `The intake valves of ${named(light)} were read on a light spring, those of ${named(running)} on the running one.`,
  );
  expect(judgement?.sentence).not.toMatch(/of 1 and 1|of 1 and 2 were/);
});
