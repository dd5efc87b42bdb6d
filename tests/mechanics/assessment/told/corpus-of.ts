import { describe, expect, test } from 'vitest';
import { blocksIn } from '../../../tools/told/blocks.ts';
import { keptBuilds, nameOf, toldOf, toldOfBuild, writeToldOfBuilds } from '../../../tools/told/corpus.ts';
import { AGAIN, isThere, isWriting, readTold, usualEvidence } from '../../../tools/told/kept.ts';

/**
 * What is told of the builds that were chosen for a part of the assessment is what was written down. It notices a
 * change that nobody meant; that what is told is right the calls, the laws and the tests against references hold.
 */
export function corpusOf(part: string): void {
  const usual = usualEvidence();
  const builds = new Map(keptBuilds(part).map((build) => [nameOf(build), build]));
  describe(`builds chosen for ${part}`, () => {
    if (isWriting) {
      test('what is told of them is written down', () => {
        writeToldOfBuilds(part);
      });
      return;
    }
    const kept = isThere(toldOf(part)) ? blocksIn(readTold(toldOf(part))) : new Map<string, string>();
    test('each is written down, and nothing else', () => {
      expect([...kept.keys()]).toEqual([...builds.keys()]);
    });
    for (const [name, build] of builds)
      test(name, () => {
        expect(toldOfBuild(build, usual), AGAIN).toBe(kept.get(name));
      });
  });
}
