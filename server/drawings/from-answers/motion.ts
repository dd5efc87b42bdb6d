import { z } from 'zod';
import { MOTION_LAWS, motionLaw } from '../../mechanics/motion-laws/motion-law.ts';
import { amount, degrees, inches } from '../drawing.ts';
import { overCrank } from '../lift-over-crank.ts';
import { draws } from './draws.ts';

const POINTS = 90;

/** Share of the flank where a rising law first comes to a share of its lift. */
function whereAt(law: ReturnType<typeof motionLaw>, share: number): number {
  let [low, high] = [0, 1];
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (law.at(middle).s < share) low = middle;
    else high = middle;
  }
  return high;
}

/** The lift over the flank, with the place where contact would be lost first. */
export const separationSpeed = draws(
  z.object({ law: z.enum(MOTION_LAWS), lift: inches, flank: degrees }),
  z.object({ atLift: amount, crankSpeed: amount }),
  ({ law: name, lift, flank }, { atLift, crankSpeed }, drawnFor) => {
    const law = motionLaw(name);
    const share = Math.min(1, Math.max(0, atLift / lift));
    return overCrank(
      {
        title: 'Where contact is lost first',
        what: 'Valve lift',
        over: 'cam degrees from the seat',
        desc: `At ${Math.round(crankSpeed)} rpm of the crank contact would be lost at a lift of ${drawnFor.ruler.text(atLift)}, were every part rigid.`,
        points: Array.from({ length: POINTS + 1 }, (_, step) => [
          (flank * step) / POINTS,
          lift * law.at(step / POINTS).s,
        ]),
        asked: [[flank * whereAt(law, share), atLift]],
      },
      drawnFor,
    );
  },
);
