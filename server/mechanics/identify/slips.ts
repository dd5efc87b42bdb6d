import table from '../../../seeds/ordinary-sizes.json' with { type: 'json' };
import { isPartFitting, isPartSize } from '../../../shared/schemas/part-words.ts';
import { IDENTIFICATION_MODEL } from './model.ts';

interface Allowed {
  readonly least: number;
  readonly most: number;
}

/** The least and the most that a size can be on a rocker [in]; undefined for what is no size. */
export function allowedFor(kind: string): Allowed | undefined {
  if (isPartSize(kind)) return IDENTIFICATION_MODEL.sizes[kind].allowed;
  return isPartFitting(kind) ? table.allowed[kind] : undefined;
}

export const isPossible = (kind: string, inches: number): boolean => {
  const allowed = allowedFor(kind);
  return allowed !== undefined && inches >= allowed.least && inches <= allowed.most;
};

/** Ways in which a number goes wrong between the tool and the record, each with what it is then multiplied by. */
const SLIPS = [
  { code: 'dot-left', factor: 0.1, typed: 'any' },
  { code: 'dot-right', factor: 10, typed: 'any' },
  { code: 'thousandths', factor: 0.001, typed: 'in' },
  { code: 'millimetres', factor: 1 / 25.4, typed: 'in' },
  { code: 'inches', factor: 25.4, typed: 'mm' },
] as const;

export interface Slip {
  readonly code: (typeof SLIPS)[number]['code'];
  /** What the size is then [in]. */
  readonly inches: number;
}

/**
 * What a reading may have been meant as that no rocker can have: the dot one place off, thousandths or millimetres
 * typed as inches, inches typed as millimetres.
 *
 * @param kind what is read
 * @param inches [in] as understood
 * @param unit the unit of the entry
 * @returns the slips that make it a size that a rocker can have; none where it is one as it is
 * Source: common practice, no published source.
 */
export function slipsOf(kind: string, inches: number, unit: string): Slip[] {
  if (isPossible(kind, inches)) return [];
  const typed = unit === 'mm' ? 'mm' : 'in';
  return SLIPS.filter((slip) => slip.typed === 'any' || slip.typed === typed).flatMap(({ code, factor }) => {
    const meant = inches * factor;
    return isPossible(kind, meant) ? [{ code, inches: meant }] : [];
  });
}
