import { describe, expect, test } from 'vitest';
import type { Evidence, PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { answered, inHand, partOf, seen, sized } from './hand-part.ts';

const assess = assessAsTold('part-apart');

const HOLE = 'hole-across-trunnion';
const caliper = (kind: string, inches: number, more: Partial<PartEvidence> = {}): PartEvidence =>
  sized(kind, inches, { tool: 'caliper', ...more });
const odd = (reading: PartEvidence): PartEvidence => ({
  ...reading,
  id: `odd-${reading.id}`,
  partId: 'odd',
});

const heard = (evidence: Evidence) => {
  const { headlines, questions, next } = assess(evidence);
  return {
    told: headlines.map(({ sentence }) => sentence).join('\n'),
    asks: questions.map(({ code }) => code),
    question: (code: string) => questions.find((each) => each.code === code),
    next: next?.action,
  };
};

/* Bands of holes and tools: common practice, no published source. Ratios by hand. */

describe('readings of one part that do not go together', () => {
  // 1.480/.872 = 1.697 and 1.480/.925 = 1.600: two arms, and one of them it is not.
  const cups = [caliper('pivot-to-tip', 1.48), caliper('pivot-to-cup', 0.872), caliper(HOLE, 0.3735)];

  test('no family is named while it is open which of two sizes holds', () => {
    const { told, next } = heard(inHand([...cups, caliper(HOLE, 0.374), caliper('pivot-to-cup', 0.925)]));
    expect(told).toMatch(/no family is named yet\. Read the same size again/);
    expect(told).not.toMatch(/stands first/);
    expect(next).toBe('two-sizes');
  });

  test('holes further apart than reading explains name no stud: a shank of a size in question is tried', () => {
    // .4352 and .4358 are made for 7/16; .405 lies nearest 3/8.
    const build = inHand([caliper(HOLE, 0.4352), caliper(HOLE, 0.4358), caliper(HOLE, 0.405)]);
    const { told, question } = heard(build);
    expect(told).toMatch(/^No stud is named yet: the readings of the hole do not go together/m);
    expect(told).not.toMatch(/suggests/);
    expect(question('two-sizes')?.test).toBe(
      'Slide a 3/8 or 7/16 stud or drill shank through it by hand: the one that goes without play is its size.',
    );
    expect(heard(answered(build, 'two-sizes', 'largest')).told).toMatch(/The hole suggests 7\/16-14 UNC/);
  });
});

describe('what a hole was made for, and the studs', () => {
  const small = [caliper(HOLE, 0.3735), caliper(HOLE, 0.374)];
  const usual = [caliper(HOLE, 0.4355), caliper(HOLE, 0.436)];

  test('a hole for 3/8 is asked about where the engine is down with 7/16 studs', () => {
    const on = (readings: readonly PartEvidence[]) => inHand(readings, { engine: { studSize: '7/16' } });
    expect(heard(on(small)).question('hole-against-engine-stud')?.ask).toBe(
      'The hole was made for 3/8, and the engine is down with 7/16 studs. Is this arm for that engine?',
    );
    expect(heard(on(usual)).asks).not.toContain('hole-against-engine-stud');
    expect(heard(inHand(small)).asks).not.toContain('hole-against-engine-stud');
  });

  test('two parts of one call that take different studs, and carry different numbers', () => {
    const parts = [
      ...usual,
      seen('other-number', 'K47'),
      ...[...small, seen('other-number', 'K52')].map(odd),
    ];
    const { question } = heard(inHand(parts, { handParts: [{ id: 'odd', name: 'the odd one' }] }));
    const asked = question('parts-take-different-studs');
    expect(asked?.ask).toMatch(/7\/16 for .*; 3\/8 for the odd one\. Are they of one set\?$/);
    expect(asked?.size).toBe('They carry different numbers: “K47” and “K52”.');
  });

  test('a micrometer for the outside goes into no hole: what was read is asked, and the stud is none', () => {
    const build = inHand([sized(HOLE, 0.4355, { tool: 'micrometer' })]);
    expect(heard(build).question('micrometer-in-hole')?.ask).toMatch(/goes into no hole\. What was read\?$/);
    expect(partOf(assess(answered(build, 'micrometer-in-hole', 'stud'))).holes).toEqual([]);
    expect(partOf(assess(answered(build, 'micrometer-in-hole', 'inside'))).holes).toHaveLength(1);
    expect(heard(inHand(usual)).asks).not.toContain('micrometer-in-hole');
  });
});

describe('a pitch that was counted, and a thread gauge', () => {
  // 16 over .75 is 21.3 to the inch, no thread; 15 over it is 20, which the gauge says too.
  const crests = sized('stud-pitch', 0.75, { count: 16, tool: 'caliper' });
  const gauge = sized('stud-pitch', 0.05, { tool: 'thread-gauge', id: 'gauge', readAs: '20 tpi' });

  test('they agree where crests were counted: the gauge counts, and they do not contradict each other', () => {
    const { told, asks, question } = heard(inHand([crests, gauge]));
    expect(told).toMatch(/pitch of the thread that came out is that of .*7\/16-20 UNF/);
    expect(asks).not.toContain('two-sizes');
    expect(question('crests-counted')?.size).toMatch(/20 tpi, says the same/);
  });

  test('counted as it was, the two contradict each other', () => {
    expect(heard(answered(inHand([crests, gauge]), 'crests-counted', 'not-found')).asks).toContain(
      'two-sizes',
    );
  });

  test('diameter and pitch that make no thread together are told as that', () => {
    // 20 to the inch is 7/16 and 1/4 and 1/2; a stud of .3725 is 3/8, which has 16 or 24.
    const { told } = heard(inHand([gauge, sized('stud-diameter', 0.3725, { tool: 'micrometer' })]));
    expect(told).toMatch(/together no ordinary thread of rockers: read both again/);
  });
});
