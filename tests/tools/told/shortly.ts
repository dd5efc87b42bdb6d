import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import { digest } from './inline.ts';
import { behind } from './told.ts';

const sentencesOf = (all: readonly { readonly sentence: string }[]): string[] =>
  all.map(({ sentence }) => sentence);

/** What is said of a build in few lines, and all the rest by a digest of each part. */
export function shortly(assessment: Assessment): string {
  const { headlines, stop, notToRun, questions, next } = assessment;
  const lines = [
    ...sentencesOf(headlines),
    ...sentencesOf(stop),
    ...sentencesOf(notToRun),
    ...questions.map(({ code, ask }) => `${code}: ${ask}`),
    ...(next === undefined ? [] : [`next: ${next.sentence}`]),
    behind(assessment)
      .map(([of, text]) => `${of.replace(/^\w+ /, '')} ${digest(text).slice(0, 6)}`)
      .join(', '),
  ];
  return lines.map((line) => line.replaceAll(/\n+/g, ' / ')).join('\n');
}
