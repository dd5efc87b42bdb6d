import { isSolidLifter } from '../../../../shared/lifters.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { allowance } from '../../kit/allowances.ts';
import { isWithin } from '../../kit/within.ts';
import { ratiosOfBuild } from '../common/build-ratios.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import { inches, listed } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { Off } from './off.ts';

/** Net lifts that the card and the rockers come to. */
function byCard({ card, rockers, engine }: Evidence): number[] {
  const ratios = ratiosOfBuild({ rockers });
  return SIDES.flatMap((side) => {
    const { lobeLift, valveLift, lash = 0 } = card[side];
    const gross =
      lobeLift === undefined || ratios.length === 0
        ? [valveLift].flatMap((each) => each ?? [])
        : ratios.map((ratio) => lobeLift * ratio);
    return gross.map((lift) => lift - (isSolidLifter(engine.lifter) ? lash : 0));
  });
}

/** Lifts of a valve that were read. */
const asRead = ({ passes, sheet }: Evidence): number[] => [
  ...passes.flatMap(({ standing, kind, value }) =>
    standing && kind === 'valve-lift' && value !== undefined ? [value] : [],
  ),
  ...sheet.flatMap(({ standing, kind, reading }) =>
    standing && kind === 'valve-lift' && reading.value !== undefined ? [reading.value] : [],
  ),
];

const each = (lifts: readonly number[]): string => listed([...new Set(lifts.map(inches))]);

/** A lift of the valve that neither the card nor any reading comes to. */
export function liftOff(netLift: number, evidence: Evidence): Off[] {
  const lifts = byCard(evidence);
  const isThere = [...lifts, ...asRead(evidence)].some((lift) =>
    isWithin(lift - netLift, allowance('stand-lift')),
  );
  if (lifts.length === 0 || isThere) return [];
  return [
    {
      said: `By the build the valve lifts ${each(lifts)}; the sum was made with ${inches(netLift)}.`,
      key: keyOfFigures('lift', ...lifts, netLift),
    },
  ];
}

/** Another length of the arm than the build has. */
export function armOff(pivotToTip: number, { rockers }: Evidence): Off[] {
  const told = rockers.pivotToTip;
  if (told === undefined || isWithin(told - pivotToTip, allowance('arm-length'))) return [];
  return [
    {
      said: `The build has ${inches(told)} from pivot to tip; the sum was made with ${inches(pivotToTip)}.`,
      key: keyOfFigures('arm', told, pivotToTip),
    },
  ];
}
