import { z } from 'zod';
import { defaultLimit } from '../../mechanics/kit/limits.ts';
import { coverWidth } from '../cover-width.ts';
import { amount, inches } from '../drawing.ts';
import { holeChord } from '../hole-chord.ts';
import { threadLength } from '../thread-length.ts';
import { draws } from './draws.ts';

export const thread = draws(
  z.object({ designation: z.object({ designation: z.string() }) }),
  z.object({ pitch: amount, majorMax: amount }),
  ({ designation }, result, drawnFor) => threadLength({ ...designation, ...result }, drawnFor),
);

export const fastenerForHole = draws(
  z.object({ hole: inches }),
  z.object({
    fasteners: z.array(
      z.object({ designation: z.string(), nominal: amount, offset: amount, fit: z.string() }),
    ),
  }),
  ({ hole }, { fasteners }, drawnFor) => holeChord({ hole, fasteners }, drawnFor),
);

const inInches = (metres: number) => metres / 0.0254;

export const coverRoom = draws(
  z.object({
    coverBolting: z.enum(['through-centre', 'perimeter']),
    assemblyWidth: inches,
    limits: z.object({ narrowUpTo: inches, wideFrom: inches }).optional(),
  }),
  z.object({ verdict: z.string(), reason: z.string() }),
  ({ coverBolting, assemblyWidth, limits }, result, drawnFor) =>
    coverWidth(
      {
        bolting: coverBolting,
        width: assemblyWidth,
        narrowUpTo: limits?.narrowUpTo ?? inInches(defaultLimit('narrow-assembly-up-to')),
        wideFrom: limits?.wideFrom ?? inInches(defaultLimit('wide-assembly-from')),
        ...result,
      },
      drawnFor,
    ),
);
