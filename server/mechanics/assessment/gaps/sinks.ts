import { isSolidLifter } from '../../../../shared/lifters.ts';
import { type Lack, toRead, toSay } from '../common/lack.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';

/** What a gap still needs that may read too large, because the lifter under it sinks. */
export function sinkingNeeds({ lifter }: Pick<SheetEvidence, 'lifter'>, evidence: Evidence): Lack[] {
  if (lifter === 'hydraulic')
    return [
      toRead(
        'lifter-sinks',
        'a reading on a solid or locked lifter: a hydraulic one sinks, and this reads too large',
      ),
    ];
  if (lifter === 'not-said' && !isSolidLifter(evidence.engine.lifter))
    return [
      toSay(
        'which-lifter',
        'which lifter it was read on: a hydraulic one sinks, and the gap reads too large',
      ),
    ];
  return [];
}
