import { z } from 'zod';
import type { Photograph } from './photographs.ts';

/** A photograph as JSON has it; the picture itself is fetched by its own address. */
export const photographView = z
  .object({
    id: z.uuid(),
    shows: z.string(),
    caption: z.string(),
    readingId: z.uuid().optional(),
    armId: z.uuid().optional(),
    width: z.int(),
    height: z.int(),
    seq: z.int(),
    by: z.string(),
    at: z.iso.datetime(),
  })
  .meta({ id: 'Photograph' });

export function showPhotograph(photograph: Photograph): z.output<typeof photographView> {
  const { readingId, armId, at, ...rest } = photograph;
  return {
    ...rest,
    ...(readingId === undefined ? {} : { readingId }),
    ...(armId === undefined ? {} : { armId }),
    at: at.toISOString(),
  };
}

/** Where the API gives the picture itself. */
export const photographAddress = (buildId: string, photographId: string): string =>
  `/api/v1/builds/${buildId}/photographs/${photographId}`;
