import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { causesOf } from '../../../server/mechanics/assessment/noise/of-gear.ts';
import { CAUSE_NAMES } from '../../../server/mechanics/noise/causes.ts';
import { causeSaid } from '../../../server/mechanics/noise/noise-words.ts';
import { geared } from './geared.ts';
import { noiseOf, said } from './noise-build.ts';
import { PLAIN } from './plain-build.ts';

/* What sets a gap goes by how the engine is made: general knowledge from memory, no published source. */

const on = (mounting: 'pedestal' | 'shaft'): Evidence => ({
  ...PLAIN,
  engine: { ...PLAIN.engine, mounting },
});
const WITHOUT_NUT: readonly [string, Evidence][] = [
  ['a finger follower', geared('finger-follower')],
  ['a bucket', geared('bucket')],
  ['a pedestal', on('pedestal')],
];
const told = (evidence: Evidence, answers: Evidence['answers'] = []) => {
  const { details, questions, headlines, notToRun, stop } = noiseOf({ ...evidence, answers });
  return [
    ...details.noise.candidates.map((each) => each.said),
    ...questions
      .filter(({ code }) => code.startsWith('noise-'))
      .flatMap(({ ask, test: how, answers: all }) => [
        ask,
        how,
        ...all.flatMap(({ label, changes }) => [label, changes]),
      ]),
    ...headlines.map(({ sentence }) => sentence),
    ...[...notToRun, ...stop].map(({ sentence }) => sentence),
  ];
};

describe('a noise in the words of what sets the gap', () => {
  test.each(WITHOUT_NUT)('no nut is named on %s', (_, evidence) => {
    expect(told(evidence).filter((text) => /\bnuts?\b/i.test(text))).toEqual([]);
    const moved = [
      said('noise-signs', 'none'),
      said('noise-nut', 'moved', { line: 51 }),
      said('noise-thread', 'worn', { line: 52 }),
    ];
    expect(told(evidence, moved).filter((text) => /\bnuts?\b/i.test(text))).toEqual([]);
  });

  test('on a shaft it is the lock nut, on a stud the nut', () => {
    expect(told(on('shaft')).filter((text) => /(?<!lock )\bnut\b/i.test(text))).toEqual([]);
    expect(causeSaid('nut-lock', 'shaft')).toBe('the lock nut');
    expect(causeSaid('nut-lock', 'stud')).toBe('the lock of the nut');
  });

  test('each cause that an engine can have has a name, whatever sets its gap', () => {
    for (const [, evidence] of WITHOUT_NUT)
      expect(
        causesOf(evidence).every(
          (cause) => CAUSE_NAMES.includes(cause) && causeSaid(cause, 'follower') !== '',
        ),
      ).toBe(true);
  });
});
