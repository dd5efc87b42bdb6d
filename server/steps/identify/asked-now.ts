import {
  isPartFeature,
  isPartFitting,
  isPartSize,
  type PART_FITTINGS,
} from '../../../shared/schemas/part-words.ts';
import type { CallContext } from '../../call/context.ts';
import type { RejectedForm } from '../../call/forms.ts';
import type { AskedOfPart } from '../../drawings/part.ts';
import { keyOf } from '../../mechanics/assessment/common/said.ts';
import type { PageAsked } from '../../web/page-request.ts';
import type { PartSeen } from './of-part.ts';

/** Everything that is asked of a part and of what goes with it. */
export type AskedKind = AskedOfPart | keyof typeof PART_FITTINGS;

const HOLE = 'hole-across-trunnion';

/** What the needs of the step ask for. */
const OF_NEED: Readonly<Record<string, AskedKind>> = {
  hole: HOLE,
  width: 'width-across-trunnion',
  rings: 'rings',
};

const askedKind = (text: string): AskedKind | undefined =>
  isPartSize(text) || isPartFeature(text) || isPartFitting(text) ? text : OF_NEED[text];

/** What somebody picked to measure, or what came back with a fault. */
export function pickedIn(req: PageAsked, rejected: RejectedForm | undefined): AskedKind | undefined {
  const picked = (rejected?.typed.form === 'part' ? rejected.typed.kind : undefined) ?? req.query.ask ?? '';
  return isPartSize(picked) || isPartFeature(picked) || isPartFitting(picked) ? picked : undefined;
}

/** What is asked now: what was picked, what came back with a fault, what the call waits for, or what tells most. */
export function askedNow(
  req: PageAsked,
  { assessment }: CallContext,
  { all, counted, ranking, detail, questions }: PartSeen,
  rejected: RejectedForm | undefined,
): AskedKind {
  const picked = pickedIn(req, rejected);
  if (picked !== undefined) return picked;
  const { next } = assessment;
  // A need of the step is of the build; a measurement that tells most is of one part.
  const own = next?.about.of === 'build' || (next !== undefined && keyOf(next.about) === keyOf(detail.about));
  const awaited = next?.step === 'identify' && own ? askedKind(next.action) : undefined;
  if (awaited !== undefined) return awaited;
  // A question that is next is about a reading: that is the one to read again.
  const question = questions.find(({ id }) => next?.id === `next:${id}`);
  const again = all.find(({ id }) => question?.restsOn.includes(id))?.kind;
  const kindAgain = again === undefined ? undefined : askedKind(again);
  if (kindAgain !== undefined) return kindAgain;
  if (counted.length === 0) return HOLE;
  // One hole alone may be oval: it is read again a quarter turn round before anything else.
  if (counted.length === 1 && counted[0]?.kind === HOLE) return HOLE;
  return (ranking ?? detail.ranking)?.offers[0]?.kind ?? HOLE;
}
