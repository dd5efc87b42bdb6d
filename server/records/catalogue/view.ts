import { z } from 'zod';
import { FAULT_CODES } from '../../../shared/problems/faults.ts';
import { quantityView } from '../../api/views.ts';
import type { SizeKind } from '../../mechanics/identify/kinds.ts';
import { SIZE_KINDS } from '../../mechanics/identify/kinds.ts';
import type { PartFamily } from './families.ts';

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
    changedAt: z.iso.datetime(),
  })
  .meta({ id: 'PartFamily' });

const camel = (kind: SizeKind) => kind.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());

export function showFamily(family: PartFamily) {
  const { sizes, features, nominalRatio, changedAt, ...rest } = family;
  return {
    ...rest,
    ...features,
    ...(nominalRatio === undefined ? {} : { nominalRatio }),
    ...Object.fromEntries(
      SIZE_KINDS.flatMap((kind) => {
        const value = sizes[kind];
        return value === undefined ? [] : [[camel(kind), { value, unit: 'in' }]];
      }),
    ),
    changedAt: changedAt.toISOString(),
  };
}

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
