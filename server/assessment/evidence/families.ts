import { createHash } from 'node:crypto';
import { defined } from '../../../shared/defined.ts';
import { PART_SIZES } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { FamilyEvidence } from '../../mechanics/assessment/part/family.ts';
import type { SizeKind } from '../../mechanics/identify/kinds.ts';
import { IN } from '../../mechanics/kit/si.ts';
import type { PartFamily } from '../../records/catalogue/families.ts';

const KINDS = keysOf(PART_SIZES);

function inMetres(sizes: PartFamily['sizes']): FamilyEvidence['sizes'] {
  const metres: Partial<Record<SizeKind, number>> = {};
  for (const kind of KINDS) {
    const size = sizes[kind];
    if (size !== undefined) metres[kind] = size * IN;
  }
  return metres;
}

/** The families of a catalogue and a text that stands for them; a catalogue is long, and the same for many pages. */
interface CatalogueEvidence {
  readonly families: readonly FamilyEvidence[];
  readonly digest: string;
}

const made = new WeakMap<readonly PartFamily[], CatalogueEvidence>();

export function catalogueEvidence(catalogue: readonly PartFamily[]): CatalogueEvidence {
  const known = made.get(catalogue);
  if (known !== undefined) return known;
  const families = catalogue.map(familyEvidence);
  const digest = createHash('sha256').update(JSON.stringify(families)).digest('base64');
  const evidence = { families, digest };
  made.set(catalogue, evidence);
  return evidence;
}

/** A line of the catalogue; who entered it and when is not asked. */
const familyEvidence = (family: PartFamily): FamilyEvidence => ({
  id: family.id,
  code: family.code,
  name: family.name,
  fits: family.fits,
  weight: family.weight,
  ...defined({ nominalRatio: family.nominalRatio }),
  sizes: inMetres(family.sizes),
  features: family.features,
});
