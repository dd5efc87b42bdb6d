import { describe, expect, test } from 'vitest';
import type { Evidence, LashEvidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { workingsPart } from '../../../server/mechanics/assessment/workings/workings.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/*
 * A pushrod longer by d presses its plunger d further, and takes ratio × d off a lash that nothing sets: by the lever about
 * the valve tip. Engines and figures are invented.
 */
const preload = (cylinder: number, valve: 'intake' | 'exhaust', inches: number): SheetEvidence => ({
  id: `${cylinder}-${valve}`,
  line: cylinder,
  standing: true,
  cylinder,
  valve,
  kind: 'preload',
  reading: { value: inches * IN },
  readAs: `${inches} in`,
  tool: 'indicator',
  spring: 'not-said',
  lifter: 'hydraulic',
  arms: 'these',
});

const four = (valve: 'intake' | 'exhaust', third: number) =>
  [0.041, 0.04, third, 0.042].map((each, index) => preload(index + 1, valve, each));

const asks = (more: Partial<Evidence>) =>
  workingsPart({
    ...PLAIN,
    engine: { ...PLAIN.engine, lifter: 'hydraulic-roller', mounting: 'pedestal' },
    ...more,
  })
    .questions.filter(({ code }) => code === 'pushrod-differs')
    .map(({ about, ask, size }) => [about, ask, size]);

const at = (valve: 'intake' | 'exhaust') => ({ of: 'valve', cylinder: 3, valve });

describe('what a pushrod of another length would make is asked of that valve', () => {
  test('one that is .050 longer: its length is asked, on its own valve', () => {
    expect(asks({ sheet: four('exhaust', 0.091) })).toEqual([
      [
        at('exhaust'),
        'How long is the pushrod of 3 exhaust?',
        'Its preload is .050 in more than in the middle of its side: one .050 in longer makes that.',
      ],
    ]);
  });

  test('the two of a cylinder swapped: both are named, each the right way', () => {
    const found = asks({ sheet: [...four('intake', 0.016), ...four('exhaust', 0.066)] });
    expect(found).toEqual([
      [
        at('intake'),
        'How long is the pushrod of 3 intake?',
        expect.stringMatching(/\.025 in shorter makes that\. 3 exhaust is off the other way.*swapped\?/),
      ],
      [
        at('exhaust'),
        'How long is the pushrod of 3 exhaust?',
        expect.stringMatching(/\.025 in longer makes that\. 3 intake is off the other way.*swapped\?/),
      ],
    ]);
  });

  test('less than the lengths that are kept are apart is reading, and three alone say nothing', () => {
    expect(asks({ sheet: four('intake', 0.055) })).toEqual([]);
    expect(asks({ sheet: four('intake', 0.091).slice(1) })).toEqual([]);
  });

  /* Two more of one valve are no siblings: with it three valves alone were read, and three say nothing. */
  test('repeats of one valve are that valve, asked once, and make no siblings', () => {
    const third = { ...preload(3, 'exhaust', 0.091), id: '3-exhaust-again' };
    const found = asks({ sheet: [...four('exhaust', 0.09), third] });
    expect(found.map(([about]) => about)).toEqual([at('exhaust')]);
    // Their middle of .0905 less .041.
    expect(found[0]?.[2]).toMatch(/^Its preload is \.050 in more/);
    expect(asks({ sheet: [third, ...four('exhaust', 0.09)] })).toEqual(found);
    expect(asks({ sheet: [...four('exhaust', 0.09).slice(1), third] })).toEqual([]);
  });

  const lash = (cylinder: number, inches: number): LashEvidence => ({
    id: `lash-${cylinder}`,
    line: cylinder,
    standing: true,
    cylinder,
    valve: 'intake',
    gap: { value: inches * IN },
    readAs: `${inches} in`,
    moment: 'found',
    engine: 'cold',
    nut: 'not-looked',
    day: '2026-03-01',
  });
  // .038 − .006 = .032 of lash, over 1.6 is .020 of pushrod.
  const LASHES = [0.038, 0.038, 0.006, 0.038].map((each, index) => lash(index + 1, each));

  test('a lash that nothing sets is less by the ratio times that', () => {
    const engine = { ...PLAIN.engine, lifter: 'solid-flat', mounting: 'pedestal' } as const;
    const rockers = { ...PLAIN.rockers, soldAs: 1.6 };
    expect(asks({ engine, rockers, lash: LASHES })).toEqual([
      [at('intake'), expect.any(String), expect.stringMatching(/\.032 in less.*one \.020 in longer/)],
    ]);
    // Nobody said a ratio: the length is told as of 1.5, .032 / 1.5 = .021, and says that it is.
    const { soldAs: _, ...unsaid } = PLAIN.rockers;
    const { assumedRatio: __, ...card } = PLAIN.card;
    expect(asks({ engine, rockers: unsaid, card, lash: LASHES })).toEqual([
      [
        at('intake'),
        expect.any(String),
        expect.stringMatching(/one \.021 in longer makes that at a ratio of 1\.5, which nobody has said\./),
      ],
    ]);
    // A nut takes it up: nothing is told of a pushrod.
    expect(asks({ engine: { ...engine, mounting: 'stud' }, rockers, lash: LASHES })).toEqual([]);
  });
});
