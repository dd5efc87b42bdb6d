import type { PartIdentification } from '../../assessment/identification/identification.ts';
import { rankedLines } from './candidate-text.ts';
import { isRanked } from './report.ts';

function nameLine(part: PartIdentification): string[] {
  const { lines } = rankedLines(part, false);
  const [first] = lines;
  if (!isRanked(part) || first === undefined) return [];
  if (first.reasons.length === 0)
    return [`The part: none of the catalogue’s families stands first, ${first.share}.`];
  const none = lines.find(({ name }) => name === 'None of these')?.share ?? '';
  return [`The part: ${first.name} stands first, ${first.share}; none of these ${none}.`];
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
