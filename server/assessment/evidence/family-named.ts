import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Evidence } from '../../mechanics/assessment/evidence.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';

/** The line of the catalogue that the rockers of a specification are sold under, by its name or its code. */
export function familyNamed(
  { rockers }: BuildSpec,
  { catalogue = [] }: Pick<BuildRecord, 'catalogue'>,
): Pick<Evidence['rockers'], 'family'> {
  const named = rockers?.family?.trim().toLowerCase();
  if (named === undefined) return {};
  const found = catalogue.find(({ name, code }) => [name, code].some((each) => each.toLowerCase() === named));
  return found?.nominalRatio === undefined
    ? {}
    : { family: { name: found.name, nominalRatio: found.nominalRatio } };
}
