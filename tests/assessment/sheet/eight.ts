import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { stamped } from '../../mechanics/assessment/plain.ts';
import { PLAIN, read } from '../../mechanics/assessment/plain-build.ts';

/* An invented engine of eight with both lifts of every valve read: lobes .361 and .334, rockers sold as 1.6, lash .016. */

const SCATTER = [0, 0.0005, -0.0005, 0.0005, 0, -0.0005, 0.0005, 0];
/** Each within .0005 of its card, as lobes are read: all of them at its figure would be asked about. */
const OF_LOBES = [0, 0.0005, 0, -0.0005, 0, 0.0005, -0.0005, 0];
export const SIDES = { intake: 0.361, exhaust: 0.334 } as const;
export type Off = (cylinder: number, side: keyof typeof SIDES) => number;

export const sheetOf = (off: Off): SheetEvidence[] =>
  SCATTER.flatMap((scatter, at) =>
    (['intake', 'exhaust'] as const).flatMap((side) => [
      read(at + 1, side, 'lobe-lift', SIDES[side] + (OF_LOBES[at] ?? 0)),
      read(at + 1, side, 'valve-lift', SIDES[side] * 1.6 + scatter + off(at + 1, side)),
    ]),
  );

export const on = (off: Off, engine: Partial<Evidence['engine']> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  engine: { ...PLAIN.engine, bankOrder: '1 3 5 7 / 2 4 6 8', ...engine },
  card: {
    assumedRatio: 1.6,
    intake: { lobeLift: 0.361 * IN, lash: 0.016 * IN },
    exhaust: { lobeLift: 0.334 * IN, lash: 0.016 * IN },
  },
  sheet: sheetOf(off),
});

export const NAMES = SCATTER.flatMap((_, at) =>
  (['intake', 'exhaust'] as const).map((valve) => ({
    cylinder: at + 1,
    valve,
    id: `${at + 1}${valve[0] ?? ''}`,
  })),
);

/** Every arm stamped 1.6, where it sits now: `{ '5e': '3e' }` puts the arm of 5 exhaust on 3 exhaust. */
export const armed = (evidence: Evidence, moved: Readonly<Record<string, string>> = {}): Evidence => ({
  ...evidence,
  arms: NAMES.map(({ id }) => ({ ...stamped('1.6', id), name: id })),
  seats: NAMES.map(({ id }) => {
    const at = NAMES.find((each) => each.id === (moved[id] ?? id));
    return { armId: id, cylinder: at?.cylinder ?? 0, valve: at?.valve ?? 'intake' };
  }),
  sheet: evidence.sheet.map((each) => ({
    ...each,
    armId: each.armId ?? `${each.cylinder}${each.valve[0] ?? ''}`,
  })),
});
