import { z } from 'zod';
import { answer, type Fields } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
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
    at: moment,
  })
  .meta({ id: 'Photograph' });

const photographFields = (photograph: Photograph): Fields<typeof photographView> => ({
  id: photograph.id,
  shows: photograph.shows,
  caption: photograph.caption,
  readingId: photograph.readingId,
  armId: photograph.armId,
  width: photograph.width,
  height: photograph.height,
  seq: photograph.seq,
  by: photograph.by,
  at: photograph.at.toISOString(),
});

export const showPhotograph = (photograph: Photograph) =>
  answer(photographView, photographFields(photograph));

/** Where the API gives the picture itself. */
const photographAddress = (buildId: string, photographId: string): string =>
  `/api/v1/builds/${buildId}/photographs/${photographId}`;

export const exportedPhotographView = photographView
  .extend({ address: z.string().meta({ description: 'where this API gives the picture as JPEG' }) })
  .meta({ id: 'ExportedPhotograph' });

export const showExportedPhotograph = (photograph: Photograph, buildId: string) =>
  answer(exportedPhotographView, {
    ...photographFields(photograph),
    address: photographAddress(buildId, photograph.id),
  });
