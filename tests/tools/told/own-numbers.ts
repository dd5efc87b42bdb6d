import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';

const COUNTED = /"id":"([\w-]*?-)(\d+)"/g;
const NUMBERED = /"(line|number)":(\d+)/g;
const PASS = /^(set-up-\d+)-(.+)$/;

/** Ids that end in a number, each with its place among those that begin like it. */
function ownIds(text: string): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const counts = new Map<string, number>();
  for (const [, begins = '', count = ''] of text.matchAll(COUNTED)) {
    const id = begins + count;
    const [, setUp = '', rest] = PASS.exec(id) ?? [];
    const at = (counts.get(begins) ?? 0) + (names.has(id) ? 0 : 1);
    counts.set(begins, at);
    const own = rest === undefined ? begins + at : `${names.get(setUp) ?? setUp}-${rest}`;
    if (!names.has(id)) names.set(id, own);
  }
  return names;
}

/** Numbers of one kind by their rank. */
function ownNumbers(text: string, kind: string): ReadonlyMap<number, number> {
  const all = [...text.matchAll(NUMBERED)]
    .filter(([, of]) => of === kind)
    .map(([, , number]) => Number(number));
  return new Map([...new Set(all)].toSorted((a, b) => a - b).map((number, at) => [number, at + 1]));
}

/** The same evidence with ids, lines and set-ups counted from one: tests count on from what was made before them. */
export function inOwnNumbers(evidence: Evidence): Evidence {
  const text = JSON.stringify(evidence);
  const ids = ownIds(text);
  const numbers = new Map(['line', 'number'].map((kind) => [kind, ownNumbers(text, kind)]));
  const own: Evidence = JSON.parse(
    text
      .replaceAll(NUMBERED, (_, kind: string, number: string) => {
        const rank = numbers.get(kind)?.get(Number(number));
        return `"${kind}":${rank ?? number}`;
      })
      .replaceAll(/[\w-]+-\d+(?![\w-])/g, (id) => ids.get(id) ?? id),
  );
  return own;
}
