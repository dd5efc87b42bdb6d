import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { intakes, PLAIN } from './plain-build.ts';

/* Eight intakes over lobes of about .350 in come to 1.600; “16” and “17” are marks without their point. */
const CYLINDERS = [1, 2, 3, 4, 5, 6, 7, 8];
const stamped = (stamps: readonly string[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  rockers: { soldAs: 1.5 },
  arms: stamps.map((ratioStamp, at) => ({
    id: `arm-${at + 1}`,
    name: `arm ${at + 1}`,
    ratioStamp,
    otherNumber: '',
    boxLabel: '',
  })),
  seats: stamps.map((_, at) => ({ cylinder: at + 1, valve: 'intake', armId: `arm-${at + 1}` })),
  ...more,
});
const ALL = CYLINDERS.map(() => '16');
const asked = (evidence: Evidence) =>
  assess(evidence).questions.filter(({ code }) => code === 'stamp-is-ratio');
const ofSide = (evidence: Evidence) =>
  assess(evidence).judgements.find(({ id }) => id === 'side:light:intake')?.sentence;
function answering(evidence: Evidence, answer: string): Evidence {
  const [question] = asked(evidence);
  const { id = '', ask = '' } = question ?? {};
  const said = { id: 'said', line: 9, questionId: id, code: 'stamp-is-ratio', question: ask, answer };
  return { ...evidence, answers: [said] };
}

describe('a mark without its point on arms that were read in no set-up', () => {
  test('is asked once for all of them before their side is held to what is sold', () => {
    const sheet = stamped(ALL, { sheet: intakes() });
    expect(asked(sheet).map(({ ask, weight }) => [ask, weight])).toEqual([
      ['Is the “16” on the arms the ratio 1.6, or another number?', 'strong'],
    ]);
    expect(assess(sheet).next?.action).toBe('stamp-is-ratio');
    expect(assess(sheet).next?.turns).toBe(false);
  });

  test('its answer is of all that carry it', () => {
    const sheet = stamped(ALL, { sheet: intakes() });
    expect(ofSide(answering(sheet, 'ratio'))).toMatch(/the 1\.6 stamped on them/);
    expect(ofSide(answering(sheet, 'other-number'))).toMatch(/over the 1\.5 they are sold as/);
    expect(asked(answering(sheet, 'ratio')).map(({ weight }) => weight)).toEqual(['weak']);
    const mixed = stamped([...ALL.slice(1), '17'], { sheet: intakes() });
    expect(asked(mixed).map(({ about }) => about.of)).toEqual(['build', 'arm']);
  });

  test('nothing rests on it: it is not asked', () => {
    expect(asked(stamped(ALL))).toEqual([]);
    expect(asked(stamped(ALL, { sheet: intakes(), rockers: { soldAs: 1.6 } }))).toEqual([]);
    expect(asked(stamped(['1.6'], { sheet: intakes() }))).toEqual([]);
  });

  test('what a change does hangs on it, with nothing read', () => {
    const change = stamped(['16'], {
      call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
    });
    expect(asked(change).map(({ ask, weight, step }) => [ask, weight, step])).toEqual([
      ['Is the “16” on it the ratio 1.6, or another number?', 'strong', 'parts'],
    ]);
    expect(assess(change).next?.action).toBe('stamp-is-ratio');
  });
});
