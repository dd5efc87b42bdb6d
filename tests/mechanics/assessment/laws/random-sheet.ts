import type {
  ArmEvidence,
  Bounds,
  LashEvidence,
  SheetEvidence,
  SheetKindName,
  TipMarkEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import type { Chance } from '../../explain-readings/random.ts';
import { known, maybe, type TrueEngine, thou } from './random-engine.ts';

const GAPS: readonly SheetKindName[] = [
  'coil-bind',
  'retainer-to-seal',
  'piston-to-valve',
  'pushrod-to-head',
  'slot-to-stud',
  'rocker-to-retainer',
  'cover',
];

/** A figure, or the gauges it lies between. */
function boundsOf(chance: Chance, inches: number): Bounds {
  if (chance.happens(0.75)) return { value: thou(inches) };
  const low = thou(Math.max(0, inches - chance.between(0.002, 0.02)));
  return chance.happens(0.3) ? { low } : { low, high: thou(inches + 0.012) };
}

export function sheetOf(chance: Chance, engine: TrueEngine, arms: readonly ArmEvidence[]): SheetEvidence[] {
  if (chance.happens(0.45)) return [];
  const cylinders = chance.pick([1, 2, 4]);
  const spring = chance.pick(['light', 'running', 'not-said'] as const);
  const lifter = chance.pick(['solid', 'locked', 'hydraulic', 'not-said'] as const);
  const copied = chance.happens(0.1);
  const rows: SheetEvidence[] = [];
  const add = (cylinder: number, valve: 'intake' | 'exhaust', kind: SheetKindName, inches: number) =>
    rows.push({
      id: `sheet-${rows.length + 1}`,
      line: 0,
      standing: !chance.happens(0.07),
      cylinder,
      valve,
      kind,
      reading: kind.endsWith('-lift') ? { value: thou(inches) } : boundsOf(chance, inches),
      readAs: `${inches.toFixed(3)} in`,
      tool: chance.pick(['indicator', 'feeler', 'clay', 'not-said']),
      spring,
      lifter: chance.happens(0.1) ? 'hydraulic' : lifter,
      arms: chance.happens(0.85) ? 'these' : 'before',
      ...known<SheetEvidence>({
        armId: maybe(chance, 0.2, () => (arms.length === 0 ? undefined : chance.pick(arms).id)),
      }),
    });
  for (let cylinder = 1; cylinder <= cylinders; cylinder++) {
    for (const valve of ['intake', 'exhaust'] as const) {
      const lobe =
        engine.lobe[valve] - (chance.happens(engine.careful ? 0.01 : 0.05) ? chance.between(0.01, 0.02) : 0);
      const noise = copied ? 0 : chance.normal(0.0015);
      const odd = chance.happens(engine.careful ? 0.02 : 0.1) ? chance.pick([0.1, -0.1, 0.02, -0.02]) : 0;
      const times = chance.happens(0.03) ? 25.4 : 1;
      const passes = chance.pick([1, 1, 2]);
      for (let pass = 0; pass < passes; pass++) {
        if (chance.happens(0.7)) add(cylinder, valve, 'lobe-lift', lobe + noise / 2);
        if (chance.happens(0.8))
          add(cylinder, valve, 'valve-lift', (lobe * engine.ratio + noise + odd) * times);
      }
      for (const gap of GAPS) {
        const count = chance.happens(0.15) ? chance.pick([1, 1, 2]) : 0;
        for (let again = 0; again < count; again++)
          add(cylinder, valve, gap, chance.between(engine.careful ? 0.09 : 0.005, 0.2));
      }
    }
  }
  return rows;
}

export function lashLogOf(chance: Chance): LashEvidence[] {
  const count = chance.pick([0, 0, 1, 3, 5]);
  return Array.from({ length: count }, (_, index) => ({
    id: `lash-${index + 1}`,
    line: 0,
    standing: !chance.happens(0.07),
    cylinder: chance.pick([1, 1, 2]),
    valve: chance.pick(['intake', 'exhaust'] as const),
    gap: { value: thou(chance.between(0.012, 0.03)) },
    readAs: '.018 in',
    moment: chance.pick(['found', 'set'] as const),
    engine: chance.pick(['not-said', 'cold', 'hot'] as const),
    nut: chance.pick(['not-looked', 'held', 'moved'] as const),
    day: `2026-03-${String(10 + index).padStart(2, '0')}`,
  }));
}

export function tipMarksOf(chance: Chance): TipMarkEvidence[] {
  const count = chance.pick([0, 0, 1, 2]);
  return Array.from({ length: count }, (_, index) => ({
    id: `mark-${index + 1}`,
    line: 0,
    standing: true,
    cylinder: 1,
    valve: chance.pick(['intake', 'exhaust'] as const),
    width: thou(chance.between(0.03, 0.15)),
    side: chance.pick(['centred', 'valley', 'exhaust', 'sideways'] as const),
    readAs: 'the mark',
    ...known<TipMarkEvidence>({
      off: maybe(chance, 0.6, () => thou(chance.between(0.005, 0.12))),
      pushrod: maybe(chance, 0.5, () => thou(chance.between(7.2, 8.2))),
      pushrodOver: maybe(chance, 0.5, () => chance.pick(['ends', 'gauge'] as const)),
      shims: maybe(chance, 0.3, () => thou(chance.pick([0, 0.03, 0.06]))),
      stem: maybe(chance, 0.5, () => thou(chance.pick([0.3125, 0.34375, 0.375]))),
    }),
  }));
}
