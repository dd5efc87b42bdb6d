import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/** A gap of one valve in the log, as it was found unless said otherwise. */
export const line = (
  number: number,
  day: string,
  gap: number,
  more: Partial<LashEvidence> = {},
): LashEvidence => ({
  id: `l${number}`,
  line: number,
  standing: true,
  cylinder: 3,
  valve: 'exhaust',
  gap: { value: gap * IN },
  readAs: `${gap} in`,
  moment: 'found',
  engine: 'cold',
  nut: 'held',
  day,
  ...more,
});
/** The plain build with that log. */
export const log = (lash: readonly LashEvidence[]): Evidence => ({ ...PLAIN, lash });
