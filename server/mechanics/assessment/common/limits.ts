import { defaultLimit, type LimitName, limitSource } from '../../kit/limits.ts';
import type { Evidence, GapName, LimitEvidence, Side } from '../evidence.ts';

/** A limit in force; where none was given for the build, the default of the seed table. */
export const limitNamed = ({ limits }: Evidence, name: LimitName): LimitEvidence =>
  limits[name] ?? { value: defaultLimit(name), source: limitSource(name) };

const nameOf = (gap: GapName, side: Side): LimitName =>
  gap === 'piston-to-valve' ? `piston-to-valve-${side}` : gap;

export const limitOf = (evidence: Evidence, gap: GapName, side: Side): LimitEvidence =>
  limitNamed(evidence, nameOf(gap, side));
