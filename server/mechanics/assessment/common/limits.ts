import { defaultLimit, isLimitName, type LimitName, limitSource } from '../../kit/limits.ts';
import type { Evidence, GapName, LimitEvidence, Side } from '../evidence.ts';

type BuiltFor = Pick<Evidence['engine'], 'use' | 'rodMaterial'>;

/** A limit in force; where none was given for the build, the default of the seed table. */
export const limitNamed = ({ limits }: Pick<Evidence, 'limits'>, name: LimitName): LimitEvidence =>
  limits[name] ?? { value: defaultLimit(name), source: limitSource(name) };

/** The limit of a gap by what the build is for: one for racing where there is one. */
function ownName(gap: GapName, side: Side, { use }: BuiltFor): LimitName {
  const name: LimitName = gap === 'piston-to-valve' ? `piston-to-valve-${side}` : gap;
  const race = `${name}-race`;
  return use === 'race' && isLimitName(race) ? race : name;
}

/** The limits that make up that of a gap: its own, and for aluminium rods, which stretch, what comes on top of it. */
export const limitNames = (gap: GapName, side: Side, built: BuiltFor): LimitName[] => [
  ownName(gap, side, built),
  ...(gap === 'piston-to-valve' && built.rodMaterial === 'aluminium' ? ['aluminium-rod' as const] : []),
];

/** What a gap is held to in this build: its limits together, each with its source. */
export function limitOf(evidence: Evidence, gap: GapName, side: Side): LimitEvidence {
  const parts = limitNames(gap, side, evidence.engine).map((name) => limitNamed(evidence, name));
  return {
    value: parts.reduce((sum, { value }) => sum + value, 0),
    source: parts.map(({ source }) => source).join('; for aluminium rods more: '),
  };
}
