import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { evidenceIn } from '../../../tools/told/evidence-text.ts';
import {
  AGAIN,
  isThere,
  isWriting,
  namesIn,
  readTold,
  usualEvidence,
  writeTold,
} from '../../../tools/told/kept.ts';
import { differences, toldBy } from '../../../tools/told/told.ts';
import { textOf, timesIn } from '../../../tools/told/told-text.ts';

/** What is told of the played calls about this, in between and at the end, is what was written down and looked at. */
export function toldOf(about: string): void {
  const usual = usualEvidence();
  for (const name of namesIn(about, '.json')) {
    const { said, times } = evidenceIn(readTold(`${about}/${name}.json`), usual);
    const file = `${about}/${name}.txt`;
    describe(`“${said}”`, () => {
      if (isWriting)
        test('is written down', () => {
          const told = times.map(({ after, evidence }) => ({ after, told: toldBy(assess(evidence)) }));
          writeTold(file, textOf(said, told));
        });
      const kept = isThere(file) ? timesIn(readTold(file)) : [];
      for (const [at, { after, evidence }] of isWriting ? [] : times.entries())
        test(`after ${after}`, () => {
          const was = kept[at]?.told ?? new Map<string, string>();
          expect(differences(was, toldBy(assess(evidence))), AGAIN).toEqual([]);
        });
    });
  }
}
