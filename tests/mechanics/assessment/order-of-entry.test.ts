import { describe, expect, test } from 'vitest';
import { changePart } from '../../../server/mechanics/assessment/change/change.ts';
import type { ValveRatio } from '../../../server/mechanics/assessment/common/valve-ratio.ts';
import type { Evidence, SheetEvidence, Side } from '../../../server/mechanics/assessment/evidence.ts';
import { marksPart } from '../../../server/mechanics/assessment/marks/marks.ts';
import { partPart } from '../../../server/mechanics/assessment/part/part.ts';
import { sheetPart } from '../../../server/mechanics/assessment/sheet/sheet.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/** A small generator of numbers that is the same on every run. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const pick = <T>(random: () => number, items: readonly T[]): T => {
  const found = items[Math.floor(random() * items.length)];
  if (found === undefined) throw new RangeError('nothing to pick from');
  return found;
};

const shuffled = <T>(random: () => number, items: readonly T[]): T[] =>
  items
    .map((item) => ({ item, at: random() }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ item }) => item);

const KINDS = [
  'lobe-lift',
  'valve-lift',
  'valve-lift',
  'piston-to-valve',
  'coil-bind',
  'cover',
  'lash',
] as const;

function reading(random: () => number, index: number): SheetEvidence {
  const kind = pick(random, KINDS);
  const usual = kind === 'lobe-lift' ? 0.35 : kind === 'valve-lift' ? 0.56 : 0.08;
  const slip = pick(random, [0, 0, 0, 0, 0, -0.1, 0.02]);
  const value =
    (usual + slip * (kind === 'valve-lift' ? 1 : 0.2) + Math.round((random() - 0.5) * 8) / 1000) * IN;
  const bounds = random() < 0.15 ? { low: value - 0.002 * IN, high: value + 0.002 * IN } : { value };
  return {
    id: `r${index}`,
    line: index,
    standing: random() < 0.95,
    cylinder: 1 + Math.floor(random() * 4),
    valve: pick(random, ['intake', 'exhaust']),
    kind,
    reading: bounds,
    readAs: `reading ${index}`,
    tool: pick(random, ['indicator', 'clay', 'not-said', 'caliper']),
    spring: pick(random, ['light', 'light', 'running', 'not-said']),
    lifter: pick(random, ['solid', 'solid', 'hydraulic']),
    arms: random() < 0.85 ? 'these' : 'before',
    ...(random() < 0.4 ? { armId: pick(random, ['A', 'B', 'C']) } : {}),
    // Some are of arms that were sold as another ratio then.
    ...(index % 5 < 2 ? { soldAsThen: index % 5 === 0 ? 1.5 : 1.55 } : {}),
  };
}

const SIDES: readonly Side[] = ['intake', 'exhaust'];

function ratio(random: () => number, index: number): ValveRatio {
  const value = 1.5 + random() * 0.2;
  return {
    setUpId: `s${index}`,
    cylinder: 1 + Math.floor(random() * 4),
    valve: pick(random, SIDES),
    value,
    low: value - 0.01,
    high: value + 0.01,
    spring: pick(random, ['light', 'running']),
    basis: 'measured',
    lashIn: pick(random, ['none', 'put-back', 'left-in']),
    lobeLift: 0.35 * IN,
    lacks: [],
    restsOn: [`p${index}`],
  };
}

function build(random: () => number): { evidence: Evidence; ratios: ValveRatio[] } {
  const sheet = Array.from({ length: 30 }, (_, index) => reading(random, index));
  return {
    evidence: {
      ...PLAIN,
      engine: { ...PLAIN.engine, cylinders: 4 },
      arms: ['A', 'B', 'C'].map((id) => ({ id, name: id, ratioStamp: '', otherNumber: '', boxLabel: '' })),
      seats: [
        { cylinder: 1, valve: 'intake', armId: 'A' },
        { cylinder: 2, valve: 'intake', armId: 'B' },
      ],
      rockers: { ...PLAIN.rockers, ...(random() < 0.5 ? { planned: 1.65 } : {}) },
      tipMarks: [0.03, 0.05, 0.07].map((width, index) => ({
        id: `m${index}`,
        line: index,
        standing: true,
        cylinder: 1,
        valve: 'intake',
        width: width * IN,
        side: pick(random, ['centred', 'valley', 'exhaust']),
        off: random() * 0.05 * IN,
        pushrod: (7.75 + index * 0.05) * IN,
        readAs: `mark ${index}`,
      })),
      sheet,
    },
    ratios: Array.from({ length: 3 }, (_, index) => ratio(random, index)),
  };
}

const told = ({ evidence, ratios }: ReturnType<typeof build>) => [
  sheetPart(evidence),
  changePart(evidence, ratios),
  marksPart(evidence, ratios),
  partPart(evidence),
];

const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);

describe('over generated builds', () => {
  test.each(SEEDS)('build %i: any order of the same entries says the same', (seed) => {
    const random = numbers(seed);
    const { evidence, ratios } = build(random);
    const other: Evidence = {
      ...evidence,
      sheet: shuffled(random, evidence.sheet),
      arms: shuffled(random, evidence.arms),
      seats: shuffled(random, evidence.seats),
      tipMarks: shuffled(random, evidence.tipMarks),
    };
    expect(told({ evidence: other, ratios: shuffled(random, ratios) })).toEqual(told({ evidence, ratios }));
  });

  test.each(SEEDS)('build %i: each id once, and no word where something must be known first', (seed) => {
    const parts = told(build(numbers(seed)));
    const all = parts.flatMap(({ judgements }) => judgements);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    const quantities = parts.flatMap((part) => part.quantities.map(({ id }) => id));
    expect(new Set(quantities).size).toBe(quantities.length);
    const questions = parts.flatMap((part) => part.questions.map(({ id }) => id));
    expect(new Set(questions).size).toBe(questions.length);
    for (const { word, lacks, sentence } of all) {
      if (word === undefined) expect(lacks.length, sentence).toBeGreaterThan(0);
      if (word === 'clear') expect(lacks, sentence).toEqual([]);
      expect(sentence).not.toMatch(/NaN|undefined|Infinity|\bsafe\b/i);
    }
  });

  test.each(SEEDS)('build %i: every reading of a gap that is short is a stop, each by itself', (seed) => {
    const given = build(numbers(seed));
    const [sheet] = told(given);
    const short = sheet?.judgements.filter(({ word }) => word === 'short') ?? [];
    const stopped =
      sheet?.stop.flatMap(({ code, entryId }) => (code === 'gap-short' ? [entryId ?? ''] : [])) ?? [];
    for (const { restsOn, sentence } of short)
      expect(stopped, sentence).toEqual(expect.arrayContaining([...restsOn]));
    const alone = (entryId: string) => {
      const rows = given.evidence.sheet.filter(({ id }) => id === entryId);
      return sheetPart({ ...given.evidence, sheet: rows }).judgements.map(({ word }) => word);
    };
    for (const entryId of stopped) expect(alone(entryId), entryId).toEqual(['short']);
  });
});
