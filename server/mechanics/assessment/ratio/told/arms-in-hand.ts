import type { Evidence } from '../../evidence.ts';
import type { PartDetail } from '../../part/detail.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { ArmsInHand } from './names.ts';

/** A part that nobody has said the arm of is this one only where there is no other arm it could be. */
function isThisArm({ arms }: Evidence, { group, arm }: GroupExplained, part: PartDetail): boolean {
  if (part.arm !== undefined) return part.arm.armId === group.armId;
  return arms.length === 0 || (arms.length === 1 && arms[0] === arm);
}

/** The ratio by the lengths of the arm itself, where they were measured in the hand and are no guess. */
export function armsInHand(
  evidence: Evidence,
  explained: GroupExplained,
  parts: readonly PartDetail[],
): ArmsInHand | undefined {
  const own = parts
    .filter((part) => isThisArm(evidence, explained, part))
    .flatMap(({ benchRatio }) => benchRatio ?? [])
    .find((bench) => bench.lacks === undefined);
  if (own === undefined || own.lacks !== undefined) return undefined;
  const { low, high, value, interval } = own;
  return { low, high, said: `about ${value}, ${interval}` };
}
