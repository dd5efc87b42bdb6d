import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { memberOf } from '../../../shared/member.ts';
import { blocksText } from './blocks.ts';
import { everything } from './everything.ts';
import { digest, inline } from './inline.ts';
import { isThere, readTold, usualEvidence, writeTold } from './kept.ts';
import { shortly } from './shortly.ts';

/*
 * Builds that were chosen because a fault in the assessment is noticed by what is told of them. They are kept as data,
 * so that another way of choosing leaves them as they are.
 */

/** A build as it is kept: what is otherwise than in a call that was only opened. */
export type KeptBuild = Readonly<Partial<Evidence>>;

export const dataOf = (part: string): string => `corpus/${part}.json`;
export const toldOf = (part: string): string => `corpus/${part}.txt`;

export function keptBuilds(part: string): readonly KeptBuild[] {
  if (!isThere(dataOf(part))) return [];
  const builds: readonly KeptBuild[] = JSON.parse(readTold(dataOf(part)));
  return builds;
}

/** One a line: what goes and what comes is seen by itself. */
export const writeBuilds = (part: string, builds: readonly KeptBuild[]): void =>
  writeTold(dataOf(part), `[\n${builds.map((build) => JSON.stringify(build)).join(',\n')}\n]\n`);

export const nameOf = (build: KeptBuild): string => digest(JSON.stringify(build));

/** Without what every call begins with. */
export function besideUsual(evidence: Evidence): KeptBuild {
  const usual = usualEvidence();
  return Object.fromEntries(
    Object.entries(evidence).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(memberOf(usual, name)),
    ),
  );
}

/** What is told of it: the sentences, and a digest of each part of what stands behind them. */
export function toldOfBuild(build: KeptBuild, usual: Evidence): string {
  const { assessment, chosen } = everything({ ...usual, ...build });
  const judged = assessment.judgements.map(({ word = 'no word', sentence }) => `${word}: ${sentence}`);
  const beside = Object.entries(chosen).map(([of, value]) => `${of} ${digest(inline(value)).slice(0, 6)}`);
  return [...judged.map((line) => line.replaceAll('\n', ' / ')), shortly(assessment), beside.join(', ')].join(
    '\n',
  );
}

/** Writes down what is told of those that are kept for this part. */
export function writeToldOfBuilds(part: string): void {
  const usual = usualEvidence();
  const told = new Map(keptBuilds(part).map((build) => [nameOf(build), toldOfBuild(build, usual)]));
  writeTold(toldOf(part), blocksText(told));
}
