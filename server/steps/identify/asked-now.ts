import { isPartFeature, isPartSize } from '../../../shared/schemas/part-words.ts';
import type { CallContext } from '../../call/context.ts';
import type { RejectedForm } from '../../call/forms.ts';
import type { AskedOfPart } from '../../drawings/part.ts';
import type { PageAsked } from '../../web/page-route.ts';
import type { PartSeen } from './of-part.ts';

const HOLE = 'hole-across-trunnion';

/** What the needs of the step ask for. */
const OF_NEED: Readonly<Record<string, AskedOfPart>> = {
  hole: HOLE,
  width: 'width-across-trunnion',
  rings: 'rings',
};

const kindOf = (text: string): AskedOfPart | undefined =>
  isPartSize(text) || isPartFeature(text) ? text : OF_NEED[text];

/** What is asked now: what was picked, what came back with a fault, what the call waits for, or what tells most. */
export function askedNow(
  req: PageAsked,
  { assessment }: CallContext,
  { counted, ranking, detail }: PartSeen,
  rejected: RejectedForm | undefined,
): AskedOfPart {
  const picked = (rejected?.typed.form === 'part' ? rejected.typed.kind : undefined) ?? req.query.ask ?? '';
  if (isPartSize(picked) || isPartFeature(picked)) return picked;
  const { next } = assessment;
  const awaited = next?.step === 'identify' ? kindOf(next.action) : undefined;
  if (awaited !== undefined) return awaited;
  if (counted.length === 0) return HOLE;
  // One hole alone may be oval: it is read again a quarter turn round before anything else.
  if (counted.length === 1 && counted[0]?.kind === HOLE) return HOLE;
  return (ranking ?? detail.ranking)?.offers[0]?.kind ?? HOLE;
}
