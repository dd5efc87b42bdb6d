import { z } from 'zod';
import { register } from '../../compute/registry.ts';
import { computation as coverRoom } from '../../mechanics/computations/cover-room.ts';
import { computation as fastenerForHole } from '../../mechanics/computations/fastener-for-hole.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';

const fastener = fastenerForHole.open(register);
const cover = coverRoom.open(register);

const fastenerResult = z.object({
  fasteners: z.array(
    z.object({ designation: z.string(), fit: z.enum(['agrees', 'cannot-tell', 'differs']) }),
  ),
  ask: z.string().optional(),
});
const coverResult = z.object({
  verdict: z.enum(['clear', 'close', 'short']),
  reason: z.string(),
  settledBy: z.string(),
});

/** What one reading of the hole says of the stud or bolt. */
export interface HoleAnswer {
  readonly reading: PartReading;
  /** Threads in reach of the reading, the likeliest first. */
  readonly threads: readonly { readonly designation: string; readonly fit: 'agrees' | 'cannot-tell' }[];
  readonly ask: string | undefined;
  readonly cautions: readonly string[];
}

/** The fastener by each reading of the hole: two directions are two answers, never one of their mean. */
export function fastenersOf(readings: readonly PartReading[]): HoleAnswer[] {
  return readings.flatMap((reading) => {
    if (reading.kind !== 'hole-across-trunnion' || reading.size === undefined) return [];
    const answer = fastener.run({ hole: { ...reading.size } }, 'inch');
    const { fasteners, ask } = fastenerResult.parse(answer.result);
    const threads = fasteners.flatMap(({ designation, fit }) =>
      fit === 'differs' ? [] : [{ designation, fit }],
    );
    return [{ reading, threads, ask, cautions: answer.cautions }];
  });
}

export type CoverAnswer = z.output<typeof coverResult> & { readonly reading: PartReading };

/** Sideways room under the valve cover, by the last width read; needs to know how the cover is bolted. */
export function coverOf(
  readings: readonly PartReading[],
  bolting: 'through-centre' | 'perimeter' | undefined,
): CoverAnswer | undefined {
  const width = readings.filter((reading) => reading.kind === 'width-across-trunnion').at(-1);
  if (width?.size === undefined || bolting === undefined) return undefined;
  const { result } = cover.run({ coverBolting: bolting, assemblyWidth: { ...width.size } }, 'inch');
  return { ...coverResult.parse(result), reading: width };
}
