import { expect } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { blocksIn, blocksText } from './blocks.ts';
import { digest } from './inline.ts';
import { AGAIN, isThere, isWriting, readTold, writeTold } from './kept.ts';
import { inOwnNumbers } from './own-numbers.ts';
import { shortly } from './shortly.ts';

/**
 * The assessment, held to what was written down of each build that a file of tests describes: short, with the test that
 * came by it first as its heading.
 */
export function assessAsTold(file: string): (evidence: Evidence) => Assessment {
  const name = `builds/${file}.txt`;
  /** What is told of each build of the test, by the digest of its evidence. */
  const kept = isThere(name) && !isWriting ? blocksIn(readTold(name)) : new Map<string, string>();
  const headings = new Map<string, string>();
  return (evidence) => {
    const own = inOwnNumbers(evidence);
    const of = digest(JSON.stringify(own));
    const told = shortly(assess(own));
    if (!isWriting) expect(told, AGAIN).toBe(kept.get(of));
    else if (!kept.has(of)) {
      kept.set(of, told);
      headings.set(of, (expect.getState().currentTestName ?? '').replaceAll(/\s+(?:> )?/g, ' '));
      writeTold(name, blocksText(kept, headings));
    }
    return assess(evidence);
  };
}
