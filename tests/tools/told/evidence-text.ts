import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';

/** What is known of a build after so many entries of its call. */
export interface KnownThen {
  readonly after: number;
  readonly evidence: Evidence;
}

/** A call as it is kept: each time with the members of the evidence that are others than the time before. */
interface KeptCall {
  readonly said: string;
  readonly times: readonly { readonly after: number; readonly known: Partial<Evidence> }[];
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What is known beside what was known before; nothing that was known is left out later. */
function beside(before: Evidence, { after, evidence }: KnownThen): [name: string, value: unknown][] {
  const was = new Map<string, unknown>(Object.entries(before));
  const is = new Map<string, unknown>(Object.entries(evidence));
  const gone = [...was.keys()].filter((name) => !is.has(name));
  if (gone.length > 0) throw new Error(`known before entry ${after}, and no more: ${gone.join()}`);
  return [...is].filter(([name, value]) => value !== undefined && !same(value, was.get(name)));
}

/** Members on a line each, and of a list each entry: what changes is seen by itself. */
const member = ([name, value]: readonly [string, unknown]): string =>
  `  ${JSON.stringify(name)}: ${
    Array.isArray(value) && value.length > 0
      ? `[\n    ${value.map((item) => JSON.stringify(item)).join(',\n    ')}\n  ]`
      : JSON.stringify(value)
  }`;

/** As it is kept, beginning with what is usual: what is known of a call that was only opened. */
export function evidenceText(said: string, usual: Evidence, times: readonly KnownThen[]): string {
  const texts = times.map((time, at) => {
    const known = beside(times[at - 1]?.evidence ?? usual, time).map(member);
    return `{ "after": ${time.after}, "known": {\n${known.join(',\n')}\n} }`;
  });
  return `{ "said": ${JSON.stringify(said)}, "times": [\n${texts.join(',\n')}\n] }\n`;
}

/** The evidence of each time, out of what is kept. */
export function evidenceIn(text: string, usual: Evidence): { said: string; times: KnownThen[] } {
  const { said, times }: KeptCall = JSON.parse(text);
  let evidence = usual;
  return {
    said,
    times: times.map(({ after, known }) => {
      evidence = { ...evidence, ...known };
      return { after, evidence };
    }),
  };
}
