import { z } from 'zod';
import { amount, inches } from '../drawing.ts';
import { retainerGap } from '../retainer-gap.ts';
import { springStack } from '../spring-stack.ts';
import { draws } from './draws.ts';

export const springLoad = draws(
  z.object({ installedHeight: inches, solidHeight: inches }),
  z.object({ openHeight: amount, margin: amount }),
  (given, result, drawnFor) => springStack({ ...given, ...result }, drawnFor),
);

/** The nest is drawn as the one spring that goes solid first. */
export const springNest = draws(
  z.object({
    installedHeight: inches.optional(),
    netLift: inches,
    springs: z.array(z.object({ solidHeight: inches, installedHeight: inches.optional() })),
  }),
  z.object({ margin: amount, limiting: z.number() }),
  ({ installedHeight: nest, netLift, springs }, { margin, limiting }, drawnFor) => {
    const { solidHeight, installedHeight = nest } = springs[limiting] ?? {};
    if (solidHeight === undefined || installedHeight === undefined) return undefined;
    return springStack(
      { installedHeight, openHeight: installedHeight - netLift, solidHeight, margin },
      drawnFor,
    );
  },
);

export const retainerToSeal = draws(
  z.object({ closedDistance: inches, netLift: inches }),
  z.object({ margin: amount }),
  ({ closedDistance, netLift }, { margin }, drawnFor) =>
    retainerGap({ closed: closedDistance, netLift, margin }, drawnFor),
);
