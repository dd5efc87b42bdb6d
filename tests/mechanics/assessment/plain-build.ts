import type {
  Evidence,
  SetUpEvidence,
  SheetEvidence,
  SheetKindName,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN, LBF, LBF_PER_IN } from '../../../server/mechanics/kit/si.ts';
import type { ValveName } from '../../../shared/schemas/words.ts';
import { nothingKnown } from './plain.ts';

/** An eight-cylinder engine with invented figures that fit together: lobe .350, rockers sold as 1.6, solid lifters. */
export const PLAIN: Evidence = {
  ...nothingKnown,
  engine: { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.35 * IN }, exhaust: { lobeLift: 0.362 * IN } },
  springs: {
    installedHeight: 1.9 * IN,
    seatLoad: 130 * LBF,
    rate: 350 * LBF_PER_IN,
    solidHeight: 1.15 * IN,
    retainerToSeal: 0.65 * IN,
  },
  rockers: { soldAs: 1.6, pivotToTip: 1.48 * IN },
};

export const SET_UP: SetUpEvidence = {
  id: 'set-up-1',
  number: 1,
  cylinder: 1,
  valve: 'intake',
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  restsOn: 'retainer-flat',
  alignment: 'parallel',
  graduation: 0.001 * IN,
  perTurn: 0.1 * IN,
  errorLimit: 0.0025 * IN,
  lobeSource: 'card',
  lobeErrorLimit: 0.0025 * IN,
};

let line = 0;

/** A reading of the sheet, one figure in inches. */
export function read(
  cylinder: number,
  valve: ValveName,
  kind: SheetKindName,
  value: number,
  more: Partial<SheetEvidence> = {},
): SheetEvidence {
  line += 1;
  return {
    id: `${kind}-${cylinder}-${valve}-${line}`,
    line,
    standing: true,
    cylinder,
    valve,
    kind,
    reading: { value: value * IN },
    readAs: `${value.toFixed(3).replace(/^0/, '')} in`,
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    arms: 'these',
    ...more,
  };
}

/** Eight intakes that scatter as real ones do: lobes about .350, lifts about .560. */
export function intakes(
  other: Readonly<Record<number, { lobe?: number; lift?: number }>> = {},
): SheetEvidence[] {
  const scatter = [0, 0.001, -0.001, 0.002, 0, -0.002, 0.001, -0.001];
  return scatter.flatMap((off, index) => {
    const own = other[index + 1];
    return [
      read(index + 1, 'intake', 'lobe-lift', own?.lobe ?? 0.35 + off / 2),
      read(index + 1, 'intake', 'valve-lift', own?.lift ?? 0.56 + off),
    ];
  });
}
