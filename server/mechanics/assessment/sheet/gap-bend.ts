import { usualDeflection } from '../../kit/allowances.ts';
import { type Lack, toRead, toSay } from '../common/lack.ts';
import type { Evidence, SheetEvidence, SheetKindName } from '../evidence.ts';

/** Gaps that a bending train leaves larger than they are. */
const WITH_LIFT: readonly SheetKindName[] = ['piston-to-valve', 'retainer-to-seal'];

type Read = Pick<SheetEvidence, 'spring' | 'kind'>;

/** By how much a gap may be smaller than it reads: the train bends on a running spring, and on one that nobody named. */
export const bendIn = ({ spring, kind }: Read, { engine }: Evidence): number =>
  spring === 'light' || !WITH_LIFT.includes(kind) ? 0 : usualDeflection(engine.mounting).to;

/** What a gap needs that the train bends in: it is not told from its limit before. */
export function bendNeeds({ spring, kind }: Read): Lack[] {
  if (spring === 'light' || !WITH_LIFT.includes(kind)) return [];
  return spring === 'running'
    ? [
        toRead(
          'light-spring',
          'a reading on a light spring: on the running one the train bends and it reads large',
        ),
      ]
    : [toSay('which-spring', 'which spring was on the valve')];
}
