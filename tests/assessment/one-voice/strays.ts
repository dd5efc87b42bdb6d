import { wordsOf } from '../../../server/mechanics/assessment/words-of.ts';
import { saidBy } from './said-by.ts';
import { plain, type Shown } from './shown.ts';

const WORD = /\b(agrees|differs|cannot tell|can’t be told|clear|close|short|odd)\b/gi;

/** What may have one of them, so that what is said need not be taken out of the others. */
const MAY_HAVE_ONE = /agrees|differs|cannot|can’t|clear|close|short|odd/i;

/** A verdict by itself, behind its valve, or as the last of what a drawing says of one gap or one side. */
const WORD_ALONE: readonly RegExp[] = [
  /^(?:\d+(?: intake| exhaust)? )?(agrees|differs|cannot tell|clear|close|short|odd)(?: one)?\.?$/i,
  /^gap .*; limit .*; (clear|close|short)\.$/,
  /^median .* (odd): [\d ,.at in−]+\.$/,
  /^cover: .* sideways (clear|close|short); height by clay$/,
];

/** Sentences and cells of every page that mean the word otherwise, or explain it; each with what it says. */
const OTHERWISE: readonly RegExp[] = [
  /^Close the call$/,
  /^In short$/,
  // The goal of a call.
  /one valve differs$/i,
  /pushrod is too short/,
  /on a stud too short/,
  /clear of the rocker/,
  // A kind of lifter.
  /short-travel lifter/,
  /the reading stops short/,
  // A question that a program answered by its code.
  /^(gap short|lash heat differs)$/,
];

/** The line without what the assessment says in it. */
function withoutSaid(line: string, said: readonly string[]): string {
  return said.reduce(
    (rest, text) => (rest.includes(text) ? rest.split(text).join(' ') : rest),
    line.toLowerCase(),
  );
}

/** Lines of a build with a verdict word that its assessment does not say; what stands on every page is left out. */
export function strays({ seed, assessment, faces }: Shown, everywhere: ReadonlySet<string>): string[] {
  const words = new Set(wordsOf(assessment).map(({ word }) => word.replace('-', ' ')));
  const said = saidBy(assessment)
    .map((text) => plain(text).toLowerCase().replace(/\.$/, ''))
    .toSorted((a, b) => b.length - a.length);
  return faces.flatMap(({ name, lines }) =>
    lines
      .filter(
        (line) =>
          MAY_HAVE_ONE.test(line) && !everywhere.has(line) && !OTHERWISE.some((each) => each.test(line)),
      )
      .flatMap((line) => {
        const rest = withoutSaid(line.replace(/^In short\. /, ''), said);
        const found = [...rest.matchAll(WORD)].map(([word]) => word.toLowerCase());
        if (found.length === 0) return [];
        // A verdict in a cell, beside a figure or in the text of a drawing: it must be one that the assessment has.
        const bare = rest.trim().replace(/\s+\.$/, '');
        const own = WORD_ALONE.map((each) => each.exec(bare)?.[1]?.toLowerCase()).find(
          (word) => word !== undefined,
        );
        if (own !== undefined && words.has(own)) return [];
        return [`build ${seed}, ${name}: ${line}`];
      }),
  );
}
