import { expect } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { AGAIN, fileName, isThere, isWriting, readTold, writeTold } from './kept.ts';
import { differences, type Told, toldBy } from './told.ts';
import { textOf, timesIn } from './told-text.ts';

const read = new Map<string, Told>();

function keptIn(file: string): Told {
  const kept = read.get(file) ?? (isThere(file) ? timesIn(readTold(file))[0]?.told : undefined) ?? new Map();
  read.set(file, kept);
  return kept;
}

/** What is told of a build that a test describes is what was written down and looked at. */
export function holdsAsTold(folder: string, said: string, evidence: Evidence): void {
  const told = toldBy(assess(evidence));
  const file = `${folder}/${fileName(said)}.txt`;
  if (isWriting) writeTold(file, textOf(said, [{ after: 0, told }]));
  else expect(differences(keptIn(file), told), AGAIN).toEqual([]);
}
