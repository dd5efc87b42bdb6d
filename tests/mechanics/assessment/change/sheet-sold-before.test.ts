import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { PLAIN, read } from '../plain-build.ts';

/* Lobes .350 in: .525 is 1.500, .560 is 1.600. Arms sold as 1.5 came off for ones that are sold as 1.6. */
const CYLINDERS = [1, 2, 3, 4, 5, 6, 7, 8];
const scatter = (cylinder: number): number => [0, 0.001, -0.001][cylinder % 3] ?? 0;
const lifts = (inches: number, more: Partial<SheetEvidence> = {}): SheetEvidence[] =>
  CYLINDERS.map((cylinder) => read(cylinder, 'intake', 'valve-lift', inches + scatter(cylinder), more));
const LOBES = CYLINDERS.map((cylinder) => read(cylinder, 'intake', 'lobe-lift', 0.35));
const OLD = lifts(0.525, { soldAsThen: 1.5 });

const build = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  sheet: [...LOBES, ...sheet],
  ...more,
});
const ofSide = (evidence: Evidence): string =>
  assess(evidence).judgements.find(({ id }) => id === 'side:light:intake')?.sentence ?? '';
const codes = (evidence: Evidence): string[] => assess(evidence).questions.map(({ code }) => code);

describe('lifts of the sheet that were read before the arms were changed', () => {
  test('are held to what those were sold as, and with which arms they were read is asked', () => {
    const before = build(OLD);
    expect(ofSide(before)).toMatch(
      /middle ratio is 1\.50\d.* the 1\.5 they were sold as when they were read/,
    );
    expect(codes(before)).toContain('gap-arms-then');
    expect(codes(before)).not.toContain('side-off');
    const [asked] = assess(before).questions.filter(({ code }) => code === 'gap-arms-then');
    expect(asked?.ask).toBe(
      'The arms were sold as 1.5 when 8 valve lifts were read, and as 1.6 now. With which arms was that?',
    );
    expect(
      assess(before)
        .missing.map(({ sentence }) => sentence)
        .join(),
    ).toMatch(/The ratio of 1, 2, 3, 4, 5, 6, 7 and 8 intake with the arms that are on now/);
    const { quantities } = assess(before);
    expect(quantities.find(({ id }) => id === 'sheet:ratio:light:1-intake')?.conditions).toContain(
      'with arms that were sold as 1.5',
    );
  });

  test('what they were sold as was put right: they are readings of the arms that are on', () => {
    const [asked] = assess(build(OLD)).questions.filter(({ code }) => code === 'gap-arms-then');
    const { id = '', code = '', ask = '' } = asked ?? {};
    const answer = { id: 'a', line: 9, questionId: id, code, question: ask, answer: 'same-arms' };
    const same = build(OLD, { answers: [answer] });
    expect(ofSide(same)).toMatch(/under the 1\.6 they are sold as/);
  });

  test('a call that is about no change holds them to what is sold as now', () => {
    const call = { ...PLAIN.call, goal: 'one-valve-differs' as const };
    expect(ofSide(build(OLD, { call }))).toMatch(/under the 1\.6 they are sold as/);
    expect(codes(build(OLD, { call }))).not.toContain('gap-arms-then');
  });

  test('read again with the arms that are on these count, and neither is set against the other', () => {
    for (const sheet of [
      [...OLD, ...lifts(0.56)],
      [...lifts(0.56), ...OLD],
    ]) {
      expect(ofSide(build(sheet))).toMatch(/middle ratio is 1\.60\d.* the 1\.6 they are sold as/);
      expect(codes(build(sheet))).not.toContain('read-otherwise');
      expect(
        assess(build(sheet))
          .missing.map(({ sentence }) => sentence)
          .join(),
      ).not.toMatch(/The ratio of .* with the arms that are on now/);
    }
  });

  test('half of them read since: two sets of arms', () => {
    const since = lifts(0.56).filter(({ cylinder }) => cylinder > 4);
    const told = assess(build([...OLD, ...since])).judgements.map(({ sentence }) => sentence);
    expect(told.join('\n')).toMatch(/two sets of arms/);
    expect(told.join('\n')).not.toMatch(/no one valve is odd/);
  });
});
