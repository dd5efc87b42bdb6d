import { z } from 'zod';
import { adjusterTurned } from '../adjuster-turned.ts';
import { amount, degrees, inches } from '../drawing.ts';
import { lashGap } from '../lash-gap.ts';
import { leaningIndicator } from '../leaning-indicator.ts';
import { draws } from './draws.ts';

export const adjuster = draws(
  z.object({
    thread: z.object({ pitch: inches }),
    mount: z.enum(['stud-nut', 'cup-screw', 'valve-end-screw']),
    lifter: z.enum(['hydraulic', 'solid']),
  }),
  z.object({ turns: z.number(), seatMovement: amount.optional(), lashChange: amount.optional() }),
  ({ thread, mount, lifter }, { turns, ...moved }, drawnFor) =>
    adjusterTurned({ mount, lifter, turned: { turns, advance: turns * thread.pitch, ...moved } }, drawnFor),
);

export const lifterPreload = draws(
  z.object({
    thread: z.object({ pitch: inches }),
    turns: z.number(),
    mount: z.enum(['stud-nut', 'cup-screw', 'valve-end-screw']),
  }),
  z.object({ preload: amount }),
  ({ thread, turns, mount }, { preload }, drawnFor) =>
    adjusterTurned(
      {
        mount,
        lifter: 'hydraulic',
        turned: { turns, advance: turns * thread.pitch, seatMovement: preload },
      },
      drawnFor,
    ),
);

export const lashHotCold = draws(
  z.object({ hotLash: inches }),
  z.object({ coldLash: amount }),
  ({ hotLash }, { coldLash }, drawnFor) => lashGap({ hot: hotLash, cold: coldLash }, drawnFor),
);

export const cosineError = draws(
  z.object({ reading: inches, tilt: degrees, contact: z.enum(['flat-face', 'carried-point']) }),
  z.object({ trueMotion: amount }),
  ({ reading, tilt, contact }, { trueMotion }, drawnFor) =>
    leaningIndicator({ tilt, contact, read: { reading, trueMotion } }, drawnFor),
);
