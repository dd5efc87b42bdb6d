import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import { digest, inline } from './inline.ts';
import { type Line, said } from './said.ts';

/** What an assessment tells: words by what they are of. */
export type Told = ReadonlyMap<string, string>;

/**
 * What stands behind what is said, for tables and drawings, with the order of each list and the entries it rests on:
 * too much to be read, each part in one line.
 */
export function behind({ details, ...lists }: Assessment): Line[] {
  const lines = [
    ...Object.entries(lists).map(([name, list]): Line => [`behind ${name}`, inline(list)]),
    ...Object.entries(details).map(([name, detail]): Line => [`detail ${name}`, inline(detail)]),
  ];
  return lines.filter(([, text]) => text !== '[]');
}

/** Everything of an assessment: what is said in words, and what stands behind it by a digest of each part. */
export function toldBy(assessment: Assessment): Told {
  const digests = behind(assessment).map(([of, text]): Line => [of, digest(text).slice(0, 6)]);
  return new Map([...said(assessment), ...digests].map(([of, words]) => [of, words.replaceAll('\n', ' / ')]));
}

/** What is told in one and in the other not so, in lines that can be read; nothing where both are the same. */
export function differences(was: Told, is: Told): string[] {
  const gone = [...was].filter(([of]) => !is.has(of)).map(([of, words]) => `not told: ${of} :: ${words}`);
  const others = [...is].flatMap(([of, words]) => {
    const before = was.get(of);
    if (before === words) return [];
    return [...(before === undefined ? [] : [`was: ${of} :: ${before}`]), `is: ${of} :: ${words}`];
  });
  return [...gone, ...others];
}
