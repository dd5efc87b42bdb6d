import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { read } from './plain-build.ts';
import { answered, armOf, EIGHT, heard, setUpOn, sixteen } from './whole-sheet.ts';

/*
 * What the sheet asks next, once something was looked at: what costs nothing first, and never what was done. Common
 * practice, no published source.
 */
const LASH = 'lash-not-said';
const [A, B] = [armOf('A'), armOf('B')];
const seat = (armId: string, cylinder: number) => ({ armId, cylinder, valve: 'intake' as const });
/** The sheet with both arms named on the two valves, then changed over and read again. */
const swapped = (
  cylinders: readonly [number, number],
  sheet: readonly SheetEvidence[],
  again: readonly number[],
): Evidence => {
  const [one, other] = cylinders;
  const armOn = ({ cylinder, valve }: SheetEvidence) =>
    valve !== 'intake' ? undefined : cylinder === one ? A.id : cylinder === other ? B.id : undefined;
  return {
    ...EIGHT,
    arms: [A, B],
    seats: [seat(B.id, one), seat(A.id, other)],
    sat: [seat(A.id, one), seat(B.id, other), seat(B.id, one), seat(A.id, other)],
    sheet: [
      ...sheet.map((each) => {
        const armId = armOn(each);
        return armId === undefined || each.kind === 'lobe-lift' ? each : { ...each, armId };
      }),
      read(one, 'intake', 'valve-lift', again[0] ?? 0, { armId: B.id }),
      read(other, 'intake', 'valve-lift', again[1] ?? 0, { armId: A.id }),
    ],
  };
};
const low = (off: number, ...places: readonly string[]) =>
  sixteen(1.6, ({ lift }, place) => (places.includes(place) ? { lift: lift - off } : {}));

describe('what stayed on its valve, low by just its lash', () => {
  const build: Evidence = {
    ...swapped([3, 5], low(0.013, '3 intake'), [0.547, 0.56]),
    card: { ...EIGHT.card, intake: { lobeLift: 0.35 * IN, lash: 0.013 * IN } },
  };

  test('is asked whether the lash was in, before a pushrod is moved', () => {
    expect(heard(build).headlines.join('\n')).toContain('stayed on 3 intake');
    expect(heard(build).next).toBe('lash-left-in');
    expect(heard(answered(build, 'lash-left-in', 'not-found')).next).toBe('swap-pushrods');
  });
});

describe('two that are off alike, swapped with each other', () => {
  const lows = low(0.03, '3 intake', '6 intake');
  const build = answered(swapped([3, 6], lows, [0.53, 0.53]), LASH, 'zero');

  test('are told as that: each wants an arm that reads right, and nobody reads them once more', () => {
    const { headlines, next, sentence } = heard(build);
    expect(headlines.join('\n')).toContain('3 intake and 6 intake read low with either arm, off alike');
    expect(headlines.join('\n')).not.toContain('.000 in');
    expect(next).toBe('name-arms');
    expect(sentence).not.toContain('once more');
  });

  test('two ordinary ones are not', () => {
    const ordinary = answered(swapped([3, 6], sixteen(1.6), [0.56, 0.56]), LASH, 'zero');
    expect(heard(ordinary).headlines.join('\n')).not.toContain('off alike');
  });
});

describe('several that are off alike, looked at', () => {
  const build = { ...EIGHT, sheet: low(0.016, '2 intake', '4 intake', '6 intake', '8 intake') };
  /** Kept in its own words, as a form keeps it. */
  const looked = (evidence: Evidence): Evidence => {
    const by = answered(evidence, 'group-off', 'not-found');
    return {
      ...by,
      answers: by.answers.map((each) => ({ ...each, answer: 'Looked: all were read alike', found: false })),
    };
  };

  test('one of them read again and like the others: the rest are not asked once more', () => {
    const [first] = build.sheet.filter(
      ({ cylinder, valve, kind }) => cylinder === 2 && valve === 'intake' && kind === 'valve-lift',
    );
    const one = looked(build);
    const again: Evidence = {
      ...one,
      sheet: [
        ...one.sheet.map((each) => (each === first ? { ...each, standing: false } : each)),
        { ...read(2, 'intake', 'valve-lift', 0.56), line: 10_500 },
      ],
    };
    const text = heard(again).headlines.join('\n');
    expect(text).toContain('All were read alike, so it is what these have in common');
    expect(text).not.toContain('ask how they were read');
  });

  test('that their lash was in says nothing of the others', () => {
    const left = answered(build, 'group-off', 'lash');
    const again: Evidence = {
      ...left,
      sheet: [
        ...left.sheet,
        ...[2, 4, 6, 8].map((cylinder, at) => ({
          ...read(cylinder, 'intake', 'valve-lift', 0.56),
          line: 10_500 + at,
        })),
      ],
    };
    const text = heard(again).headlines.join('\n');
    expect(text).toContain('Those that were low had their lash in, as was answered, and were read again.');
    expect(text).not.toContain('They were read at zero lash');
  });
});

describe('a lobe that was read in a set-up alone', () => {
  test('tells the cam from the rest, and is not asked for', () => {
    const sheet = sixteen(1.6).filter(({ cylinder, valve }) => cylinder !== 2 || valve !== 'intake');
    const build = answered({ ...EIGHT, sheet, ...setUpOn(2, undefined, [0.53, 0.53, 0.53]) }, LASH, 'zero');
    // A row of the sheet without its lobe.
    const row = { ...build, sheet: [...build.sheet, read(2, 'intake', 'valve-lift', 0.53)] };
    const text = heard(row).headlines.join('\n');
    expect(text).toContain('2 intake is the odd one');
    expect(text).toContain('on a lobe like the others’');
    expect(heard(row).sentence).not.toMatch(/[Rr]ead the lobe of 2 intake/);
  });
});

describe('a lobe far under its card, near that of the other valve', () => {
  const card = {
    ...EIGHT.card,
    intake: { lobeLift: 0.34 * IN },
    exhaust: { lobeLift: 0.355 * IN },
  };

  test('in a set-up: it is not run while it is asked whose it is, and that is asked before anything is read', () => {
    const { setUps, passes } = setUpOn(8, undefined, [0.549, 0.549, 0.549], { valve: 'exhaust' });
    const build: Evidence = {
      ...EIGHT,
      card,
      setUps,
      passes: passes.map((each) => (each.kind === 'lobe-lift' ? { ...each, value: 0.343 * IN } : each)),
    };
    const { all, next } = heard(build);
    expect(all.questions.map(({ code }) => code)).toContain('valve-swapped');
    expect(all.notToRun.map(({ sentence }) => sentence).join('\n')).toContain(
      'the lobe of 8 exhaust reads .343 in, .012 in under the card, unless it was read on the other valve',
    );
    expect(next).toBe('valve-swapped');
  });

  test('on the sheet too', () => {
    const sheet = [
      ...[1, 2, 3, 4, 5, 6, 7].flatMap((cylinder) => [
        read(cylinder, 'exhaust', 'lobe-lift', 0.355),
        read(cylinder, 'exhaust', 'valve-lift', 0.568 + cylinder / 10_000),
      ]),
      read(8, 'exhaust', 'lobe-lift', 0.3425),
      read(8, 'exhaust', 'valve-lift', 0.549),
    ];
    const { all } = heard({ ...EIGHT, card, sheet });
    expect(all.questions.map(({ code }) => code)).toContain('valve-swapped');
    expect(all.notToRun.map(({ sentence }) => sentence).join('\n')).toContain(
      'Do not run it: the lobe of 8 exhaust',
    );
  });
});
