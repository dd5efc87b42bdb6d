import { describe, expect, test } from 'vitest';
import limits from '../../../seeds/limits.json' with { type: 'json' };
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { marksPart } from '../../../server/mechanics/assessment/marks/marks.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { ARM, RATIO } from './ratio-of-one.ts';
import { tipMark } from './tip-mark.ts';

const told = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}) =>
  marksPart({ ...PLAIN, ...ARM, ...more, tipMarks }, [RATIO]);
const wordOf = (...marks: readonly TipMarkEvidence[]) => told(marks).judgements[0]?.word;
const lacksOf = (...marks: readonly TipMarkEvidence[]) => told(marks).judgements[0]?.lacks;

/* A .600 lift on a 1.60 in arm: least sweep .028377, ordinary to .0484 (check values 8). */
describe('a mark over the ordinary', () => {
  const judged = tipMark('j', 0.06);
  const beside = (width: number, more: Partial<TipMarkEvidence> = {}) =>
    tipMark('b', width, { cylinder: 3, ...more });

  test('is wide by the band of the trade alone, .080 of the seed table', () => {
    expect(limits.limits['ordinary-mark-up-to'].value).toBe(0.08);
    expect(told([tipMark('j', 0.081)]).judgements[0]?.sentence).toMatch(
      /Wide: over the \.080 in that the trade has/,
    );
    expect([wordOf(tipMark('j', 0.08)), wordOf(tipMark('j', 0.081))]).toEqual(['cannot-tell', 'differs']);
  });

  test('is wide beside one made alike that is narrower by more than .010, which ink is not read finer than', () => {
    expect(wordOf(judged, beside(0.049))).toBe('differs');
    expect(wordOf(judged, beside(0.05))).toBe('cannot-tell');
    expect(wordOf(judged, beside(0.09))).toBe('cannot-tell');
    expect(lacksOf(judged, beside(0.055))).toEqual(['a narrower mark made in the same way']);
  });

  test('a second mark of its own valve that is wider does not make it wide', () => {
    const at = (id: string, width: number, pushrod: number) => tipMark(id, width, { pushrod: pushrod * IN });
    expect(wordOf(at('j', 0.06, 7.8), at('k', 0.075, 7.85))).toBe('cannot-tell');
  });

  test('one found after running and one of fresh ink are not compared, nor two on other springs or by other arms', () => {
    const ran = { found: 'after-running' } as const;
    expect(wordOf(tipMark('j', 0.06, ran), beside(0.04))).toBe('cannot-tell');
    expect(wordOf(judged, beside(0.04, ran))).toBe('cannot-tell');
    expect(wordOf(tipMark('j', 0.06, ran), beside(0.04, ran))).toBe('differs');
    expect(wordOf(tipMark('j', 0.06, { spring: 'running' }), beside(0.04, { spring: 'light' }))).toBe(
      'cannot-tell',
    );
    expect(lacksOf(tipMark('j', 0.06, ran), beside(0.04))).toEqual([
      'a second mark made in the same way, of that valve or of a neighbour',
    ]);
    const arms = ['1.5', '1.6'].map((ratioStamp) => ({
      id: ratioStamp,
      name: ratioStamp,
      ratioStamp,
      otherNumber: '',
      boxLabel: '',
    }));
    const by = (own: string, other: string) =>
      told([tipMark('j', 0.06, { armId: own }), beside(0.04, { armId: other })], { arms }).judgements[0]
        ?.word;
    expect([by('1.5', '1.6'), by('1.6', '1.6')]).toEqual(['cannot-tell', 'differs']);
  });
});

describe('two marks of one length on opposite sides of the middle', () => {
  const rod = { pushrod: 7.8 * IN };
  const valley = tipMark('v', 0.04, { ...rod, side: 'valley', off: 0.012 * IN, line: 3 });
  const exhaust = tipMark('x', 0.04, { ...rod, side: 'exhaust', off: 0.01 * IN, line: 4 });
  const both = told([valley, exhaust]);
  const [asked] = both.questions.filter(({ code }) => code === 'marks-apart');
  const answered = (answer: string, more: readonly TipMarkEvidence[] = []) =>
    told([valley, exhaust, ...more], {
      answers: [
        {
          id: 'a',
          line: 5,
          code: 'marks-apart',
          questionId: asked?.id ?? '',
          question: asked?.ask ?? '',
          answer,
        },
      ],
    });

  test('ask which holds, and no direction is told', () => {
    expect(both.questions.map(({ code, weight }) => [code, weight])).toEqual([['marks-apart', 'strong']]);
    expect(asked?.byLooking).toBe(true);
    expect(both.detail.valves[0]?.first?.said).toMatch(/say first which one holds/);
    expect(both.headlines[0]?.sentence).not.toMatch(/longer|shorter|too (?:short|long)|Next try/);
    expect(told([exhaust, valley])).toEqual(both);
  });

  test('the one that holds is gone by', () => {
    const holds = answered('mark-1');
    expect(holds.questions.map(({ code, answered: said }) => [code, said?.answer])).toEqual([
      ['marks-apart', 'mark-1'],
      ['mark-off-centre', undefined],
    ]);
    expect(holds.detail.valves[0]?.judgedId).toBe('v');
    expect(holds.detail.valves[0]?.first?.said).toMatch(/too short/);
    expect(answered('mark-2').detail.valves[0]?.first?.said).toMatch(/too long/);
  });

  test('where nobody can say it is inked once more, and that one counts alone', () => {
    const open = answered('neither');
    expect(open.judgements[0]?.word).toBeUndefined();
    expect(open.detail.valves[0]?.first?.said).toMatch(/^Ink it once more/);
    const again = answered('neither', [tipMark('n', 0.041, { ...rod, line: 6 })]);
    expect(again.detail.valves[0]?.judgedId).toBe('n');
    expect(again.detail.valves[0]?.first?.todo).toBe(false);
  });

  test('of two lengths, of one that has run, or nearer than ink is read they are no contradiction', () => {
    const codes = (...marks: readonly TipMarkEvidence[]) => told(marks).questions.map(({ code }) => code);
    expect(codes(valley, { ...exhaust, pushrod: 7.85 * IN })).not.toContain('marks-apart');
    expect(codes(valley, { ...exhaust, found: 'after-running' })).not.toContain('marks-apart');
    expect(codes({ ...valley, off: 0.002 * IN }, { ...exhaust, off: 0.002 * IN })).not.toContain(
      'marks-apart',
    );
  });
});
