import type { TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

/** A centred mark of the intake of cylinder 1, its width in inches. */
export const tipMark = (id: string, width: number, more: Partial<TipMarkEvidence> = {}): TipMarkEvidence => ({
  id,
  line: 1,
  standing: true,
  cylinder: 1,
  valve: 'intake',
  width: width * IN,
  side: 'centred',
  readAs: `${width} in wide`,
  ...more,
});
