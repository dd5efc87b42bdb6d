import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { leastOf } from '../../mechanics/gap-scan/least.ts';
import { stationsOf } from '../../mechanics/gap-scan/stations.ts';
import { curveOfCard } from '../../mechanics/lobe/lift-curve.ts';
import { pistonDrop as dropAt } from '../../mechanics/slider-crank/piston-travel.ts';
import { sliderCrank } from '../../mechanics/slider-crank/slider-crank.ts';
import { amount, degrees } from '../drawing.ts';
import { gapScan as drawGapScan } from '../gap-scan.ts';
import { overCrank } from '../lift-over-crank.ts';
import { pistonToValve as drawPistonToValve } from '../piston-to-valve.ts';
import { draws } from './draws.ts';
import { fitDrawn } from './scan-fit.ts';

const IN = 0.0254;
const DEG = Math.PI / 180;
const side = z.enum(['intake', 'exhaust']);
const crankFields = { stroke: z.number(), rodLength: z.number(), pinOffset: z.number().default(0) };

/** Even angles from one to another, both in degrees. */
const steps = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, step) => from + ((to - from) * step) / count);

export const lobeProfile = draws(
  z.object({
    lobeLift: z.number(),
    centreline: z.number(),
    side,
    durations: z.array(z.object({ atLift: z.number(), duration: z.number() })),
    crankAngles: z.array(degrees),
  }),
  z.object({ lifts: z.array(amount) }),
  ({ crankAngles, side: which, ...card }, { lifts }, drawnFor) => {
    const lobe = curveOfCard(card, which, 0, '');
    const angles = steps(lobe.from / DEG, lobe.to / DEG, 120);
    return overCrank(
      {
        title: `Lift of the ${which} lobe`,
        what: 'Lobe lift',
        desc: `The lobe lifts ${drawnFor.ruler.text(card.lobeLift / IN)} at ${((lobe.from + lobe.to) / 2 / DEG).toFixed(1)} degrees after top dead centre.`,
        points: angles.map((angle) => [angle, lobe.liftAt(angle * DEG) / IN]),
        asked: crankAngles.map((angle, index) => [angle, lifts[index] ?? 0]),
      },
      drawnFor,
    );
  },
);

export const pistonDrop = draws(
  z.object({ ...crankFields, crankAngles: z.array(degrees), from: z.enum(['crank-zero', 'true-tdc']) }),
  z.object({ drops: z.array(amount), tdcAt: amount, actualStroke: amount }),
  ({ crankAngles, from, ...parts }, { drops, tdcAt, actualStroke }, drawnFor) => {
    const crank = sliderCrank(parts.stroke, parts.rodLength, parts.pinOffset);
    const zero = from === 'true-tdc' ? 0 : tdcAt;
    const angles = steps(Math.min(0, ...crankAngles), Math.max(180, ...crankAngles), 180);
    return overCrank(
      {
        title: 'Piston down from its true top',
        what: 'Drop',
        down: true,
        desc: `From true top to true bottom the piston travels ${drawnFor.ruler.text(actualStroke)}.`,
        points: angles.map((angle) => [angle, dropAt(crank, (angle - zero) * DEG) / IN]),
        asked: crankAngles.map((angle, index) => [angle, drops[index] ?? 0]),
      },
      drawnFor,
    );
  },
);

export const pistonToValve = draws(
  z.object({
    ...crankFields,
    valveAngle: z.number(),
    floor: z.enum(['pocket', 'flat']),
    closedGapAtTdc: z.number(),
    side,
  }),
  z.object({
    margin: amount,
    limit: amount,
    atCrankAngle: amount,
    curve: z.array(z.object({ crankAngle: amount, gap: amount })),
  }),
  ({ valveAngle, floor, closedGapAtTdc, side: which, ...parts }, { curve, ...result }, drawnFor) => {
    const crank = sliderCrank(parts.stroke, parts.rodLength, parts.pinOffset);
    const along = floor === 'pocket' ? Math.cos(valveAngle) : 1 / Math.cos(valveAngle);
    const stations = curve.map(({ crankAngle, gap }) => {
      const piston = (closedGapAtTdc + dropAt(crank, crankAngle * DEG) * along) / IN;
      // Valve and gap together reach the piston; a valve that is shut stands at zero.
      return { crankAngle, piston, valve: Math.max(0, piston - gap) };
    });
    return drawPistonToValve({ ...result, side: which, stations }, drawnFor);
  },
);

export const gapScan = draws(
  z.object({
    readings: z.array(z.object({ crankAngle: z.number(), gap: z.number() })),
    readingUncertainty: z.number().optional(),
  }),
  z.object({ least: amount, atCrankAngle: amount, limit: amount }),
  ({ readings, readingUncertainty }, result, drawnFor) => {
    const stations = stationsOf(readings);
    return drawGapScan(
      {
        ...result,
        readings: stations.map(({ crankAngle, gap }) => [crankAngle / DEG, gap / IN] as const),
        ...defined({ fit: fitDrawn(leastOf(stations, readingUncertainty)) }),
      },
      drawnFor,
    );
  },
);
