import { z } from 'zod';
import { FAULT_CODES } from '../../../shared/problems/faults.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment, quantityView } from '../../../shared/schemas/answer-parts.ts';
import type { PartFamily } from './families.ts';
import type { Loaded } from './import.ts';

const inchesView = quantityView.optional();

/** The shape of a part family in JSON answers. */
export const familyView = z
  .object({
    id: z.uuid(),
    code: z.string(),
    name: z.string(),
    fits: z.string(),
    nominalRatio: z.number().optional(),
    mount: z.string().optional(),
    tip: z.string().optional(),
    rings: z.string().optional(),
    holeAcrossTrunnion: inchesView,
    widthAcrossTrunnion: inchesView,
    rollerDiameter: inchesView,
    bodyWidth: inchesView,
    pivotToTip: inchesView,
    pivotToCup: inchesView,
    weight: z.number(),
    notes: z.string(),
    by: z.string(),
    changedAt: moment,
  })
  .meta({ id: 'PartFamily' });

const made = (inches: number | undefined) =>
  inches === undefined ? undefined : { value: inches, unit: 'in' as const };

export const showFamily = (family: PartFamily) =>
  answer(familyView, {
    id: family.id,
    code: family.code,
    name: family.name,
    fits: family.fits,
    nominalRatio: family.nominalRatio,
    mount: family.features.mount,
    tip: family.features.tip,
    rings: family.features.rings,
    holeAcrossTrunnion: made(family.sizes['hole-across-trunnion']),
    widthAcrossTrunnion: made(family.sizes['width-across-trunnion']),
    rollerDiameter: made(family.sizes['roller-diameter']),
    bodyWidth: made(family.sizes['body-width']),
    pivotToTip: made(family.sizes['pivot-to-tip']),
    pivotToCup: made(family.sizes['pivot-to-cup']),
    weight: family.weight,
    notes: family.notes,
    by: family.by,
    changedAt: family.changedAt.toISOString(),
  });

export const loadedView = z
  .object({
    rows: z.int(),
    added: z.int(),
    changed: z.int(),
    unchanged: z.int(),
    loaded: z.boolean().meta({ description: 'false after a dry run' }),
    faults: z.array(
      z.object({
        row: z.int().meta({ description: 'row of the file; the header is 1' }),
        field: z.string().meta({ description: 'column; empty when it is the row as a whole' }),
        code: z.enum(FAULT_CODES),
        detail: z.string(),
        typed: z.string(),
      }),
    ),
  })
  .meta({ id: 'CatalogueLoad' });

export const showLoaded = (loaded: Loaded) =>
  answer(loadedView, {
    rows: loaded.rows,
    added: loaded.added,
    changed: loaded.changed,
    unchanged: loaded.unchanged,
    loaded: loaded.loaded,
    faults: loaded.faults,
  });
