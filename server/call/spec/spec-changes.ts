import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { specFacts } from './spec-facts.ts';

/** As many changes as are read at a glance. */
const FEW = 4;

const factsAt = (spec: BuildSpec): Map<string, { readonly label: string; readonly value: string }> =>
  new Map(
    specFacts(spec).flatMap(({ legend, facts }) =>
      facts.map(({ label, value }) => [`${legend} ${label}`, { label, value }] as const),
    ),
  );

/** What one revision has otherwise than the one before, each entry with its figure and what stood there. */
export function changesSaid(before: BuildSpec, after: BuildSpec): string {
  const [was, is] = [factsAt(before), factsAt(after)];
  const set = [...is].flatMap(([key, { label, value }]) => {
    const old = was.get(key)?.value;
    if (old === value) return [];
    return [`${label} ${value}${old === undefined ? '' : ` (was ${old})`}`];
  });
  const gone = [...was].flatMap(([key, { label, value }]) =>
    is.has(key) ? [] : [`${label} taken out (was ${value})`],
  );
  const all = [...set, ...gone];
  const more = all.length - FEW;
  return [...all.slice(0, FEW), ...(more > 0 ? [`${more} more`] : [])].join(', ');
}
