import type { PartIdentification } from '../../assessment/identification/identification.ts';
import { rankedLines } from './candidate-text.ts';
import { isRanked, nextToMeasure } from './report.ts';

function nameLine(part: PartIdentification): string[] {
  const {
    lines: [first],
    none,
  } = rankedLines(part, false);
  if (!isRanked(part) || first === undefined) return [];
  if (first === none) return [`The part: none of the catalogue’s families stands first, ${none.share}.`];
  return [`The part: ${first.name} stands first, ${first.share}; none of these ${none.share}.`];
}

/** The family that stands first, the fastener by the hole, and the room sideways under the cover. */
export function foundOfPart(part: PartIdentification): string[] {
  const threads = new Set(
    part.fasteners.flatMap((hole) => {
      const agreeing = hole.threads.filter(({ fit }) => fit === 'agrees');
      return (agreeing.length > 0 ? agreeing : hole.threads).map(({ designation }) => designation);
    }),
  );
  return [
    ...nameLine(part),
    ...(threads.size > 0 ? [`The hole suggests ${[...threads].join(' or ')}; the thread proves it.`] : []),
    ...(part.cover === undefined ? [] : [`Sideways under the cover: ${part.cover.verdict}.`]),
  ];
}

/** `Pivot to cup. It would raise the chance …`: where the heading says “Next” already. */
export function measureNext(part: PartIdentification): string[] {
  const next = nextToMeasure(part);
  if (next === undefined) return [];
  const { measure, why } = next;
  return [measure === undefined ? why : `${measure.charAt(0).toUpperCase()}${measure.slice(1)}. ${why}`];
}
