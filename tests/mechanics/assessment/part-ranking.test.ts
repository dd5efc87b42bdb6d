import { describe, expect, test } from 'vitest';
import type { Evidence, PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { wordsOf } from '../../../server/mechanics/assessment/words-of.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { DEMO_FAMILY_EVIDENCE as FAMILIES } from './demo-family-evidence.ts';
import { seen as seenAs, sized } from './hand-part.ts';
import { nothingKnown } from './plain.ts';

const assess = assessAsTold('part-ranking');

const seen = (kind: string, word: string) => seenAs(kind, word, { id: kind });

/** The invented Sorrel 160-B as a caliper reads it: holes and rollers a few thousandths small, common practice. */
const HOLES = [sized('hole-across-trunnion', 0.4355), sized('hole-across-trunnion', 0.4362)];
const AWAITED = [...HOLES, sized('width-across-trunnion', 1.6), seen('rings', 'visible')];
const SORREL = [
  ...AWAITED,
  sized('roller-diameter', 0.496),
  sized('body-width', 0.841),
  sized('pivot-to-tip', 1.453),
  sized('pivot-to-cup', 0.911),
  seen('tip', 'roller'),
  seen('mount', 'stud'),
];

const on = (part: readonly PartEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...nothingKnown,
  call: { ...nothingKnown.call, goal: 'identify' },
  families: FAMILIES,
  part,
  ...more,
});
const family = (evidence: Evidence) =>
  assess(evidence).headlines.find(({ id }) => id === 'headline:part:family')?.sentence;

describe('no family is named in the headline', () => {
  test('from one kind of reading, however often it was taken', () => {
    expect(family(on(HOLES))).toBe('The part: no family is named from one kind of reading.');
  });

  test('below the chance from which one is told: many families go with a hole and a width', () => {
    expect(family(on(AWAITED))).toBe('The part: no family is likely enough to be named yet.');
  });

  test('against the lengths of its own arms: 1.365 over .910 is 1.50, and it is sold as a 1.6', () => {
    const families = FAMILIES.filter(({ code }) => code === 'DEMO-SOR-160-B').map((each) => {
      const { 'pivot-to-tip': _, 'pivot-to-cup': __, ...sizes } = each.sizes;
      return { ...each, sizes };
    });
    const others = SORREL.filter(({ kind }) => !kind.startsWith('pivot-to-'));
    expect(family(on(others, { families }))).toMatch(/Sorrel 160-B stands first/);
    const lengths = [sized('pivot-to-tip', 1.365), sized('pivot-to-cup', 0.91)];
    expect(family(on([...others, ...lengths], { families }))).toMatch(
      /^The part: no family is named: Sorrel 160-B fits best otherwise, but it is a 1\.6, and by its arm lengths the part is about 1\.50, 1\.4\d\d to 1\.5\d\d\. Measure both lengths once more\.$/,
    );
  });
});

describe('while no family is named', () => {
  const FAR = SORREL.map((each) => (each.kind === 'roller-diameter' ? sized('roller-diameter', 0.35) : each));
  const cases = {
    'nothing was read': [],
    'one kind was read': HOLES,
    'none is likely enough': AWAITED,
    'one reading asks for itself first': FAR,
    'two sizes of one place': [...SORREL, sized('body-width', 0.7)],
  };

  test.each(Object.entries(cases))(
    '%s: no chance stands anywhere, nor what a family would mean',
    (_, part) => {
      const assessment = assess(on(part));
      const { ranking } = assessment.details.parts[0] ?? {};
      expect(ranking?.told).toBe(false);
      expect(ranking?.candidates.length).toBeGreaterThan(0);
      expect(ranking?.candidates.filter(({ chance }) => chance !== undefined)).toEqual([]);
      expect(ranking).not.toHaveProperty('noneOfThese');
      expect(ranking?.implied).toEqual([]);
      const { headlines, questions, next } = assessment;
      expect(JSON.stringify([ranking?.tell, headlines, questions, next])).not.toMatch(/\d %/);
    },
  );

  test('once one is named every chance is back', () => {
    const { ranking } = assess(on(SORREL)).details.parts[0] ?? {};
    expect(ranking?.told).toBe(true);
    expect(ranking?.candidates.filter(({ chance }) => chance === undefined)).toEqual([]);
    expect(ranking?.implied.map(({ what }) => what)).toEqual(['stud', 'cover', 'guide']);
  });
});

describe('the part against the catalogue', () => {
  test('a part as it was made stands first, with its chance and that of none of these', () => {
    expect(family(on(SORREL))).toMatch(
      /^The part: Sorrel 160-B stands first, \d+ %; none of these (under )?\d+ %\.$/,
    );
    const [first, second] = assess(on(SORREL)).details.parts[0]?.ranking?.candidates ?? [];
    expect(first?.family.code).toBe('DEMO-SOR-160-B');
    // A hole of .4375 read as .4355: .002 small, in metres as everything here.
    expect((first?.reasons[0]?.difference ?? 0) / IN).toBeCloseTo(-0.002, 9);
    expect(first?.chance?.probability ?? 0).toBeGreaterThan(second?.chance?.probability ?? 1);
  });

  test('no name before something was measured, nor without a catalogue; marks are no measurement', () => {
    const mark: PartEvidence = { ...seen('other-number', 'K7'), id: 'mark' };
    expect(family(on([mark]))).toBeUndefined();
    expect(family(on(SORREL, { families: [] }))).toBeUndefined();
    const { families: _, ...without } = on(SORREL);
    expect(assess(without).details.parts[0]).not.toHaveProperty('ranking');
  });

  test('what was not read says the same with the catalogue and without it', () => {
    const { families: _, ...without } = on([]);
    const { details: one, ...said } = assess(on([]));
    const { details: other, ...same } = assess(without);
    expect(said).toEqual(same);
    expect(one.parts[0]?.ranking?.counted).toBe(0);
    expect(other.parts[0]?.ranking).toBeUndefined();
  });

  test('every share is a chance: with those that are not shown they come to one', () => {
    const few = FAMILIES.slice(0, 20);
    const { candidates = [], noneOfThese } =
      assess(on(SORREL, { families: few })).details.parts[0]?.ranking ?? {};
    const sum = candidates.reduce((total, { chance }) => total + (chance?.probability ?? 0), 0);
    expect(sum + (noneOfThese?.probability ?? 0)).toBeCloseTo(1, 9);
  });

  test('the order of the readings does not matter', () => {
    expect(assess(on(SORREL.toReversed())).details.parts).toEqual(assess(on(SORREL)).details.parts);
  });

  test('a word of each reading against each family is among those that a face may show', () => {
    const assessment = assess(on(SORREL));
    const words = new Map(wordsOf(assessment).map(({ id, word }) => [id, word]));
    expect(words.get('part:family:DEMO-SOR-160-B:hole-across-trunnion')).toBe('agrees');
    expect(words.get(`part:hole:${HOLES[0]?.id}`)).toBe('agrees');
  });
});

describe('the measurement that settles most', () => {
  test('the hole both ways, width and rings come first; then what tells most, and it turns nothing', () => {
    const { call } = on([]);
    const told = { ...call, engineState: 'apart', contact: 'none' } as const;
    expect(assess(on(HOLES, { call: told })).next?.action).toBe('width');
    const { next, details } = assess(on(AWAITED, { call: told }));
    const { tell, offers } = details.parts[0]?.ranking ?? {};
    expect(tell?.kind).toBe(offers?.[0]?.kind);
    expect(next).toMatchObject({
      step: 'identify',
      action: tell?.kind,
      reason: tell?.sentence,
      turns: false,
    });
    expect(next?.reason).toMatch(/ would tell most\.$/);
    // Named by the rest; what is left is told with its figures.
    const named = on(SORREL.filter(({ kind }) => kind !== 'body-width' && kind !== 'pivot-to-tip'));
    expect(family(named)).toMatch(/stands first/);
    expect(assess(named).details.parts[0]?.ranking?.tell.sentence).toMatch(
      / would tell most: it would raise the chance .* from \d+ % to \d+ %\.$/,
    );
  });

  test('it is next where the call is about the part, and for no other goal', () => {
    const of = (goal: Evidence['call']['goal']) =>
      assess(on(AWAITED, { call: { ...nothingKnown.call, goal } })).next?.id ?? '';
    expect(of('identify')).toMatch(/^next:part:/);
    expect(of('verify-ratio')).not.toMatch(/^next:part:/);
  });

  test('with everything read nothing is left to measure, and the ratio stays unknown', () => {
    const { tell, offers } = assess(on(SORREL)).details.parts[0]?.ranking ?? {};
    expect(offers).toEqual([]);
    expect(tell).toMatchObject({ byRatio: true });
    expect(tell?.sentence).toMatch(/ratio/);
    expect(assess(on(SORREL)).next?.id).not.toMatch(/^next:part:/);
  });
});
