import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../../../server/mechanics/assessment/evidence.ts';
import { geared, MM } from './geared.ts';
import { PLAIN, read } from './plain-build.ts';

/** Shims of buckets, and engines with several valves of a kind. The figures are invented. */

describe('shims', () => {
  let line = 0;
  const lash = (
    place: ValvePlace,
    found: number,
    shim?: number,
    more: Partial<LashEvidence> = {},
  ): LashEvidence => {
    line += 1;
    return {
      ...place,
      id: `lash-${place.cylinder}-${place.valve}-${line}`,
      line,
      standing: true,
      gap: { value: found * MM },
      readAs: `${found} mm`,
      moment: 'found',
      engine: 'cold',
      nut: 'not-looked',
      day: '2026-03-14',
      ...(shim === undefined ? {} : { shim: shim * MM }),
      ...more,
    };
  };
  const card = { lashAt: 'cold', intake: { lash: 0.2 * MM }, exhaust: { lash: 0.25 * MM } } as const;
  const log = [
    lash({ cylinder: 1, valve: 'intake' }, 0.1, 2.7),
    lash({ cylinder: 2, valve: 'intake' }, 0.3, 2.6),
    lash({ cylinder: 1, valve: 'exhaust' }, 0.15, 2.8),
    lash({ cylinder: 1, valve: 'intake-2' }, 0.2, 2.65),
  ];
  const of = (lines: readonly LashEvidence[], stock: readonly number[] = []) =>
    assess({
      ...geared('bucket', { lash: lines, card }),
      engine: {
        cylinders: 4,
        intakeValves: 2,
        gear: 'bucket',
        lifter: 'solid-flat',
        shimStock: stock.map((each) => each * MM),
      },
    }).details.lash.shims.rows;

  test('in three orders of entry the same table: shims change places, one comes from stock', () => {
    for (const order of [log, log.toReversed(), [...log.slice(2), ...log.slice(0, 2)]]) {
      const lines = order.map((each, index) => ({ ...each, line: index + 1 }));
      const rows = of(lines, [2.7]);
      expect(rows.map(({ sentence }) => sentence)).toEqual([
        '1 intake: 0.10 mm found, 0.20 mm wanted: too tight. 2.60 mm from 2 intake goes in for its 2.70 mm, which leaves 0.20 mm.',
        '1 intake 2: 0.20 mm found, 0.20 mm wanted: near enough. Its own 2.65 mm shim stays.',
        // 2.80 + .15 − .25 = 2.70; the one of the first intake is free, so that nothing is fetched.
        expect.stringMatching(/^1 exhaust: 0\.15 mm found, 0\.25 mm wanted: too tight\. 2\.70 mm /),
        // 2.60 + .30 − .20 = 2.70.
        expect.stringMatching(/^2 intake: 0\.30 mm found, 0\.20 mm wanted: too wide\. 2\.70 mm /),
      ]);
      // Two valves want 2.70 mm: one has that of the first intake, one that of the stock.
      expect(rows.flatMap(({ choice }) => choice?.from ?? []).sort()).toEqual([
        'own',
        'stock',
        'valve',
        'valve',
      ]);
    }
  });

  test('one that is right and gives its shim away is told so', () => {
    // 2.59 + .31 − .25 = 2.65: of what is there 2.66 alone is near enough, 2.68 leaves .22. In its place 2.68 leaves .23.
    const forced = of(
      [
        lash({ cylinder: 3, valve: 'exhaust' }, 0.25, 2.66),
        lash({ cylinder: 2, valve: 'exhaust' }, 0.31, 2.59),
        lash({ cylinder: 1, valve: 'exhaust' }, 0.18, 2.68),
      ],
      [],
    );
    const giver = forced.find(({ givesTo }) => givesTo !== undefined && givesTo.cylinder === 2);
    expect(giver?.cylinder).toBe(3);
    expect(giver?.right).toBe(true);
    expect(giver?.sentence).toMatch(/right, but its 2\.66 mm goes to 2 exhaust\. 2\.68 mm from 1 exhaust/);
  });

  test('between two feelers a shim is told no finer than they tell, and one in stock that may be right serves', () => {
    // 2.60 + .12 to .15 − .20 = 2.52 to 2.55.
    const found = lash({ cylinder: 1, valve: 'intake-2' }, 0, 2.6, {
      gap: { low: 0.12 * MM, high: 0.15 * MM },
    });
    const [ordered] = of([found], [2.5]);
    expect(ordered?.sentence).toMatch(
      /It wants 2\.52 to 2\.55 mm .*: read the gap with closer feelers before one is ordered/,
    );
    const [served] = of([found], [2.5, 2.55]);
    expect(served?.toHave).toBeUndefined();
    expect(served?.sentence).toMatch(/2\.55 mm from stock goes in .* which leaves 0\.17 to 0\.20 mm/);
  });

  test('the number of a valve does not run into its figure', () => {
    const { headlines } = assess({
      ...geared('bucket', { lash: [lash({ cylinder: 1, valve: 'intake-2' }, 0.1, 2.64)], card }),
      engine: { cylinders: 1, intakeValves: 2, gear: 'bucket', lifter: 'solid-flat', shimStock: [] },
    });
    expect(headlines.map(({ sentence }) => sentence).join()).toMatch(/Shims to order: 1 intake 2: 2\.54 mm/);
  });

  test('a hot gap is not set against a cold card; a gap that was set without its shim lacks it', () => {
    const [hot] = of([lash({ cylinder: 1, valve: 'intake' }, 0.1, 2.7, { engine: 'hot' })]);
    expect(hot?.lacks.map(({ said }) => said)).toEqual([
      'the gap with the engine cold, as the card’s lash is for',
    ]);
    expect(hot?.choice).toBeUndefined();
    const [after] = of([
      lash({ cylinder: 1, valve: 'intake' }, 0.1, 2.7),
      lash({ cylinder: 1, valve: 'intake' }, 0.2, undefined, { moment: 'set' }),
    ]);
    expect(after?.lacks.map(({ said }) => said)).toEqual(['the shim that is in, measured itself']);
  });

  test('of pushrods there is no such table', () => {
    expect(assess({ ...PLAIN, lash: log, card: { ...PLAIN.card, ...card } }).details.lash.shims.rows).toEqual(
      [],
    );
  });
});

describe('several valves of a kind', () => {
  const two = (sheet: Evidence['sheet']): Evidence => ({
    ...geared('bucket', { sheet }),
    engine: { cylinders: 2, intakeValves: 2, exhaustValves: 1, gear: 'bucket', lifter: 'solid-flat' },
  });

  test('each has its row, intakes before exhausts, and the first keeps its name', () => {
    const { rows, names } = assess(two([read(2, 'intake-2', 'valve-lift', 0.35)])).details.sheet;
    expect(names).toEqual(['intake', 'intake-2', 'exhaust']);
    expect(rows.map(({ cylinder, valve }) => `${cylinder} ${valve}`)).toEqual([
      '1 intake',
      '1 intake-2',
      '1 exhaust',
      '2 intake',
      '2 intake-2',
      '2 exhaust',
    ]);
  });

  test('the second intake is told from all the intakes, and named as the second', () => {
    const lifts = [0.35, 0.351, 0.35, 0.33];
    const places = [
      [1, 'intake'],
      [1, 'intake-2'],
      [2, 'intake'],
      [2, 'intake-2'],
    ] as const;
    const sheet = places.map(([cylinder, valve], index) =>
      read(cylinder, valve, 'valve-lift', lifts[index] ?? 0),
    );
    const judgements = assess(two(sheet)).judgements.filter(({ word }) => word === 'odd');
    expect(judgements.map(({ id }) => id)).toEqual(['odd:light:2-intake-2']);
    expect(judgements[0]?.sentence).toMatch(/^2 intake 2 is the odd one/);
  });

  test('without that said the rows are as they were', () => {
    const { rows } = assess({ ...PLAIN, sheet: [read(1, 'intake', 'lobe-lift', 0.35)] }).details.sheet;
    expect(rows).toHaveLength(16);
    expect(new Set(rows.map(({ valve }) => valve))).toEqual(new Set(['intake', 'exhaust']));
  });
});
