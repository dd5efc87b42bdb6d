import type { Told } from './told.ts';

/** What is told at one time of a call: after so many of its entries. */
export interface ToldThen {
  readonly after: number;
  readonly told: Told;
}

const PARTED = ' :: ';
const GONE = 'no more: ';
const HEADING = /^after (\d+)$/;

/** As it is kept: of each time what was not told so the time before. */
export function textOf(title: string, times: readonly ToldThen[]): string {
  const blocks = times.map(({ after, told }, at) => {
    const before = times[at - 1]?.told ?? new Map<string, string>();
    const gone = [...before.keys()].filter((of) => !told.has(of)).map((of) => GONE + of);
    const now = [...told].filter(([of, words]) => before.get(of) !== words);
    return [`after ${after}`, ...gone, ...now.map(([of, words]) => of + PARTED + words)].join('\n');
  });
  return `${[title, ...blocks].join('\n\n')}\n`;
}

/** All that was told at each time, out of what is kept. */
export function timesIn(text: string): ToldThen[] {
  const times: ToldThen[] = [];
  let told = new Map<string, string>();
  for (const line of text.split('\n').slice(1)) {
    const after = HEADING.exec(line)?.[1];
    if (after !== undefined) {
      told = new Map(told);
      times.push({ after: Number(after), told });
    } else if (line.startsWith(GONE)) told.delete(line.slice(GONE.length));
    else if (line !== '') {
      const at = line.indexOf(PARTED);
      told.set(line.slice(0, at), line.slice(at + PARTED.length));
    }
  }
  return times;
}
