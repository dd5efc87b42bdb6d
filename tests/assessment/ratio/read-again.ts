import type { Evidence, SetUpEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { cleanSetUp, IN, passesOf, stamped } from '../../mechanics/assessment/plain.ts';
import { cardOf, readBoth } from './row.ts';

const SECOND = 'set-up-2';

interface Again {
  readonly first: readonly [Partial<SetUpEvidence>, readonly number[]];
  readonly again: readonly [Partial<SetUpEvidence>, readonly number[]];
  readonly more?: Partial<Evidence>;
}

/** Read once, and again in a set-up of its own; lobe .345 from the card. */
export function twice({ first, again, more }: Again): Evidence {
  const build = readBoth([], [], { card: cardOf(0.345), more: { engine: { mounting: 'stud' }, ...more } });
  return {
    ...build,
    setUps: [
      { ...cleanSetUp, ...first[0] },
      { ...cleanSetUp, id: SECOND, number: 2, ...again[0] },
    ],
    passes: [
      ...passesOf('valve-lift', first[1], { counted: true }),
      ...passesOf('valve-lift', again[1], { setUpId: SECOND, counted: true }),
    ],
  };
}

export const lobeOn = (cylinder: number, inches: number): Evidence['sheet'][number] => ({
  id: `sheet-${cylinder}`,
  line: 60 + cylinder,
  standing: true,
  cylinder,
  valve: 'intake',
  kind: 'lobe-lift',
  reading: { value: inches * IN },
  readAs: `${inches} in`,
  tool: 'indicator',
  spring: 'light',
  lifter: 'solid',
  arms: 'these',
});

export const ARMS = [stamped('1.6'), stamped('1.6', 'arm-b')];
export const sits = (cylinder: number, armId: string) => ({ cylinder, valve: 'intake' as const, armId });

/** A swap read with set-ups: A on 1 and then on 3, B the other way round. */
export function swapped(a: readonly number[], b: readonly number[]): Evidence {
  const build = readBoth([], []);
  const places = [
    ['s1', 1, 'arm-a', a],
    ['s2', 3, 'arm-b', b],
    ['s3', 1, 'arm-b', b],
    ['s4', 3, 'arm-a', a],
  ] as const;
  return {
    ...build,
    arms: ARMS,
    seats: [sits(1, 'arm-b'), sits(3, 'arm-a')],
    setUps: places.map(([id, cylinder, armId], index) => ({
      ...cleanSetUp,
      id,
      number: index + 1,
      cylinder,
      armId,
    })),
    passes: places.flatMap(([setUpId, , , lifts]) => passesOf('valve-lift', lifts, { setUpId })),
  };
}
