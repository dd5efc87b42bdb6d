import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { placeOf } from '../../../server/mechanics/assessment/common/said.ts';
import type {
  Evidence,
  SheetEvidence,
  SheetKindName,
} from '../../../server/mechanics/assessment/evidence.ts';
import { rowsOf } from '../../../server/mechanics/assessment/sheet/rows.ts';
import { unlikeSprings } from '../../../server/mechanics/assessment/sheet/side-springs.ts';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import type { ValveName } from '../../../shared/schemas/words.ts';
import { stamped } from '../../mechanics/assessment/plain.ts';
import { PLAIN, read } from '../../mechanics/assessment/plain-build.ts';

/*
 * What all valves of a side say together. Bands of a light-spring ratio (2 % ordinary, 2 to 4.5 % over made for flex),
 * repeats within .002, odd beyond .008, a card within .0025: common practice, no published source. Engine and cam are
 * invented: lobes .350 and .345, rockers sold as 1.6.
 */

const SCATTER = [0, 0.001, -0.001, 0.001, 0, -0.001, 0.001, 0];
const SIDES = { intake: 0.35, exhaust: 0.345 } as const;

type Column = (lobe: number, cylinder: number, off: number) => number;

const column = (side: keyof typeof SIDES, kind: SheetKindName, of: Column): SheetEvidence[] =>
  SCATTER.map((off, at) => read(at + 1, side, kind, of(SIDES[side], at + 1, off)));

/** Lobes as on the card, or others; lifts by this ratio of them. */
const sides = (ratio: number | Readonly<Record<keyof typeof SIDES, number>>, lobeOff = 0): SheetEvidence[] =>
  (['intake', 'exhaust'] as const).flatMap((side) => [
    ...column(side, 'lobe-lift', (lobe, _, off) => lobe + lobeOff + off / 2),
    ...column(
      side,
      'valve-lift',
      (lobe, _, off) => (lobe + lobeOff) * (typeof ratio === 'number' ? ratio : ratio[side]) + off,
    ),
  ]);

const on = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * IN }, exhaust: { lobeLift: 0.345 * IN } },
  sheet,
  ...more,
});

const headlines = (evidence: Evidence): string[] =>
  assess(evidence).headlines.map(({ sentence }) => sentence);
/** What the figures raise: how the lash was is asked of every sheet that does not say it. */
const codes = (evidence: Evidence): string[] =>
  [...new Set(assess(evidence).questions.map(({ code }) => code))].filter((code) => code !== 'lash-not-said');
const words = (sentence: string): number => sentence.split(/\s+/).length;

const answer = (evidence: Evidence, code: string, said: string, found?: boolean): Evidence => {
  const questions = assess(evidence).questions.filter((each) => each.code === code);
  const answers = questions.map(({ id, ask }, at) => ({
    id: `answer-${at}`,
    line: 900 + at,
    questionId: id,
    code,
    question: ask.slice(0, 100),
    answer: said,
    ...(found === undefined ? {} : { found }),
  }));
  return { ...evidence, answers };
};

describe('a whole side off what its arms are held to be', () => {
  test('all sixteen at 1.44, sold as 1.6: said and asked once, and no slip of one of them', () => {
    const evidence = on(sides(1.44));
    const [first = ''] = headlines(evidence);
    expect(first).toMatch(/^All 16 valves read alike, about 1\.440: 10 % under the 1\.6 they are sold as\./);
    expect(words(first)).toBeLessThanOrEqual(30);
    expect(codes(evidence)).toEqual(['side-off']);
    expect(assess(evidence).next).toMatchObject({ action: 'side-off' });
  });

  test.each([
    [1.513, 'stamped', /5 % under the 1\.6 stamped on them/],
    [1.55, 'sold', /3 % under the 1\.6 they are sold as/],
    [1.72, 'sold', /(7|8) % over the 1\.6 they are sold as/],
    [1.4, 'sold', /(12|13) % under the 1\.6/],
  ])('all at %s, %s as 1.6', (ratio, how, said) => {
    const arms = SCATTER.flatMap((_, at) =>
      (['intake', 'exhaust'] as const).map((valve) => ({ valve, at, id: `arm-${valve}-${at + 1}` })),
    );
    const marked =
      how === 'sold'
        ? {}
        : {
            arms: arms.map(({ id }) => stamped('1.6', id)),
            seats: arms.map(({ id, at, valve }) => ({ armId: id, cylinder: at + 1, valve })),
          };
    const evidence = on(sides(ratio), marked);
    expect(headlines(evidence).join('\n')).toMatch(said);
    const slips = assess(evidence).questions.filter(({ about }) => about.of === 'valve');
    expect(slips.map(({ code }) => code)).toEqual([]);
    const doubted = assess(evidence).judgements.filter(({ id }) => id.startsWith('odd:in-doubt'));
    expect(doubted).toEqual([]);
  });

  test('the card’s lash left in all of them is named: .016 of .560', () => {
    const lashed = on(
      (['intake', 'exhaust'] as const).flatMap((side) => [
        ...column(side, 'lobe-lift', (lobe) => lobe),
        ...column(side, 'valve-lift', (lobe, _, off) => lobe * 1.6 - 0.016 + off),
      ]),
      {
        card: {
          assumedRatio: 1.6,
          intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN },
          exhaust: { lobeLift: 0.345 * IN, lash: 0.016 * IN },
        },
      },
    );
    const question = assess(lashed).questions.find(({ code }) => code === 'side-off');
    expect(question?.size).toContain('lash of .016 in, left in, would make it');
  });

  test('looked at and read right: it is another set; read wrong: they are read again', () => {
    const evidence = on(sides(1.44));
    expect(headlines(answer(evidence, 'side-off', 'not found', false))[0]).toMatch(
      /not that set\. Look its number up/,
    );
    expect(headlines(answer(evidence, 'side-off', 'set-up'))[0]).toMatch(/another reading of them/);
  });

  test('one odd valve among a whole side that is off: both are said', () => {
    const sheet = sides(1.44).map((each) =>
      each.cylinder === 5 && each.valve === 'intake' && each.kind === 'valve-lift'
        ? { ...each, reading: { value: 0.484 * IN } }
        : each,
    );
    const said = headlines(on(sheet)).join('\n');
    expect(said).toMatch(/5 intake is the odd one/);
    expect(said).toMatch(/15 of the 16 valves read alike, about 1\.44/);
  });

  test('a running spring 3 % under is no fault of the set', () => {
    const running = sides(1.55).map((each) => ({ ...each, spring: 'running' as const }));
    expect(codes(on(running))).toEqual([]);
    expect(headlines(on(running))[0]).toMatch(
      /on the running spring is 1\.5\d\d; a loaded ratio is set against no mark/,
    );
  });

  test('a whole side a turn short stays one question, of the turn', () => {
    const sheet = sides(1.6).map((each) =>
      each.kind === 'valve-lift'
        ? { ...each, reading: { value: (each.reading.value ?? 0) - 0.1 * IN } }
        : each,
    );
    const found = assess(on(sheet)).questions.filter(({ code }) => code === 'turn-miscounted');
    expect(found.map(({ about }) => about)).toEqual([
      { of: 'side', valve: 'intake' },
      { of: 'side', valve: 'exhaust' },
    ]);
    expect(codes(on(sheet))).not.toContain('side-off');
  });
});

describe('lobes that all lie off the card', () => {
  test('.335 and .330 against .350 and .345: said and asked, once a side', () => {
    const evidence = on(sides(1.61, -0.015));
    expect(headlines(evidence).join('\n')).toMatch(
      /All 8 intake lobes read about \.335 in, \.015 in low against the card’s \.350 in\./,
    );
    expect(assess(evidence).questions.filter(({ code }) => code === 'lobes-off-card')).toHaveLength(2);
    expect(assess(evidence).stop).toEqual([]);
    expect(headlines(answer(evidence, 'lobes-off-card', 'other-card')).join('\n')).toMatch(
      /card is not this cam’s/,
    );
  });

  test('within what card and tool explain nothing is asked', () => {
    expect(codes(on(sides(1.61, -0.0015)))).toEqual([]);
  });
});

describe('a clean sheet is an answer', () => {
  test('all sixteen at 1.610: no valve stands out, and how far it is from what they are sold as', () => {
    const evidence = on(sides(1.61));
    const [first = ''] = headlines(evidence);
    expect(first).toBe(
      'No valve stands out: all 16 lie within .001 in of the middle of their side. Their middle ratio is 1.610, 1 % over the 1.6 they are sold as. How the lash was is not said.',
    );
    expect(headlines(evidence).filter((said) => said.includes('stands out'))).toHaveLength(1);
    expect(assess(evidence).next?.sentence).toContain('No valve stands out');
  });

  test('3 % over is ordinary, and the measured figure is used', () => {
    expect(headlines(on(sides(1.65)))[0]).toMatch(/ordinary for arms made with room for flex\. Use 1\.650/);
  });

  test('intakes at 1.66 and exhausts at 1.61 of one set are told apart', () => {
    const said = headlines(on(sides({ intake: 1.66, exhaust: 1.61 })));
    expect(said.join('\n')).toMatch(/Intakes read 1\.660 and exhausts 1\.610, 3 % apart/);
    expect(headlines(on(sides({ intake: 1.61, exhaust: 1.6 }))).join('\n')).not.toMatch(/apart/);
  });
});

describe('slips of one reading that others speak against', () => {
  test('.506 among seven of .503 to .505 is no .560 with its digits swapped', () => {
    const lifts = [0.504, 0.505, 0.503, 0.504, 0.505, 0.503, 0.506, 0.504];
    const sheet = lifts.flatMap((lift, at) => [
      read(at + 1, 'intake', 'lobe-lift', 0.35),
      read(at + 1, 'intake', 'valve-lift', lift),
    ]);
    expect(codes(on(sheet))).toEqual(['side-off']);
  });

  test('alone it is asked, as before', () => {
    const sheet = sides(1.6).map((each) =>
      each.cylinder === 7 && each.valve === 'intake' && each.kind === 'valve-lift'
        ? { ...each, reading: { value: 0.506 * IN } }
        : each,
    );
    expect(codes(on(sheet))).toContain('digits-swapped');
  });

  test('the same arm reads so on another valve: the swap is told', () => {
    const arms = [5, 7].map((cylinder) => stamped('1.6', `arm-${cylinder}`));
    const usual = sides(1.61).filter(
      ({ cylinder, valve, kind }) =>
        !(kind === 'valve-lift' && valve === 'intake' && (cylinder === 5 || cylinder === 7)),
    );
    const lift = (cylinder: number, value: number, armId: string) =>
      read(cylinder, 'intake', 'valve-lift', value, { armId });
    const evidence = on(
      [
        ...usual,
        lift(5, 0.525, 'arm-5'),
        lift(5, 0.525, 'arm-5'),
        lift(7, 0.563, 'arm-7'),
        lift(7, 0.526, 'arm-5'),
        lift(5, 0.563, 'arm-7'),
      ],
      {
        arms,
        seats: [
          { armId: 'arm-5', cylinder: 7, valve: 'intake' as ValveName },
          { armId: 'arm-7', cylinder: 5, valve: 'intake' as ValveName },
        ],
      },
    );
    expect(codes(evidence)).not.toContain('digits-swapped');
    expect(codes(evidence)).not.toContain('hand-read-backwards');
    expect(headlines(evidence).join('\n')).toMatch(/It is the part: 5\./);
  });

  test('millimetres come off a millimetre dial: 13.78 among 14.30 is no inch hand read backwards', () => {
    const metric = sides(1.61).map((each) => {
      const own =
        each.cylinder === 5 && each.valve === 'intake' && each.kind === 'valve-lift' ? 13.78 * MM : undefined;
      const value = own ?? each.reading.value ?? 0;
      return { ...each, reading: { value }, readAs: `${(value / MM).toFixed(2)} mm` };
    });
    expect(codes(on(metric))).toEqual([]);
    expect(headlines(on(metric))[0]).toMatch(/5 intake is the odd one/);
  });
});

describe('a call about the ratio with the whole sheet read', () => {
  const verify = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence =>
    on(sheet, { call: { ...PLAIN.call, goal: 'verify-ratio' }, ...more });

  test('all off alike: what settles it is next, before a mark is read, with marks and without', () => {
    expect(assess(verify(sides(1.5))).next).toMatchObject({ action: 'side-off' });
    const arms = SCATTER.flatMap((_, at) =>
      (['intake', 'exhaust'] as const).map((valve) => ({ valve, at, id: `arm-${valve}-${at + 1}` })),
    );
    const marked = {
      arms: arms.map(({ id }) => stamped('1.6', id)),
      seats: arms.map(({ id, at, valve }) => ({ armId: id, cylinder: at + 1, valve })),
    };
    expect(assess(verify(sides(1.5), marked)).next).toMatchObject({ action: 'side-off' });
  });

  test('read wrong, as was answered: all of them again; read right: the marks', () => {
    const evidence = verify(sides(1.5));
    expect(assess(answer(evidence, 'side-off', 'set-up')).next).toMatchObject({ action: 'read-again' });
    expect(assess(answer(evidence, 'side-off', 'not found', false)).next).toMatchObject({ action: 'arm' });
  });

  test('level with what they are sold as: one valve in a set-up of its own, with what the sheet does not bear', () => {
    const named = {
      arms: [stamped('1.6', 'arm-1')],
      seats: [{ armId: 'arm-1', cylinder: 1, valve: 'intake' as ValveName }],
    };
    expect(assess(verify(sides(1.6), named)).next?.sentence).toMatch(
      /^Take the lash of one valve of the sheet up to zero, on a light spring/,
    );
    const running = sides(1.53).map((each) => ({ ...each, spring: 'running' as const }));
    expect(assess(verify(running, named)).next?.sentence).toMatch(
      /^Put a light spring on one valve of the sheet/,
    );
  });

  test('the lash of the card makes it on both sides: it is told and taken up first', () => {
    const card = {
      assumedRatio: 1.6,
      intake: { lobeLift: 0.35 * IN, lash: 0.018 * IN },
      exhaust: { lobeLift: 0.345 * IN, lash: 0.018 * IN },
    };
    const sheet = sides(1.6).map((each) =>
      each.kind === 'valve-lift'
        ? { ...each, reading: { value: (each.reading.value ?? 0) - 0.018 * IN } }
        : each,
    );
    const { next, headlines: said } = assess(verify(sheet, { card }));
    expect(said[0]?.sentence).toMatch(/First: one of them again at zero lash/);
    expect(next?.sentence).toMatch(/^Take the lash of one of them up to zero/);
  });

  test('nothing stamped, nothing sold: a name on its condition, without a chance; held to be something, none', () => {
    const { soldAs: _, ...rockers } = PLAIN.rockers;
    const bare = { rockers, arms: [], seats: [] };
    // 1.610 ± what arms of one name spread by: 1.6 is the nearest of a list in steps of .05.
    expect(headlines(on(sides(1.61), bare))[0]).toMatch(
      /Their middle ratio is 1\.610: with the lash out, a set of 1\.6 arms\./,
    );
    // Half way between two names neither is told alone.
    expect(headlines(on(sides(1.62), bare))[0]).toMatch(
      /with the lash out, a set (of 1\.6 arms, or of 1\.65 arms|of 1\.65 arms, or of 1\.6 arms); the part number tells which/,
    );
    expect(headlines(on(sides(1.61)))[0]).not.toMatch(/a set of/);
    const running = sides(1.61).map((each) => ({ ...each, spring: 'running' as const }));
    expect(headlines(on(running, bare))[0]).not.toMatch(/a set of/);
    const sinking = sides(1.61).map((each) => ({ ...each, lifter: 'hydraulic' as const }));
    expect(headlines(on(sinking, bare))[0]).toMatch(
      /1\.610\. Not their ratio yet: a hydraulic lifter that sinks reads low\./,
    );
    // Nobody said which lifters with the readings: they are the engine's, and no lash is asked of those.
    const unsaid = sides(1.61).map((each) => ({ ...each, lifter: 'not-said' as const }));
    const engine = { ...PLAIN.engine, lifter: 'hydraulic-flat' as const };
    const [said] = headlines(on(unsaid, { ...bare, engine }));
    expect(said).toMatch(/1\.610\. Not their ratio yet: a hydraulic lifter that sinks reads low\./);
    expect(said).not.toContain('lash');
  });
});

test('of a cylinder with two intakes each is named, where one was read on either spring', () => {
  const lift = (cylinder: number, valve: ValveName, spring: 'light' | 'running') =>
    read(cylinder, valve, 'valve-lift', 0.56, { spring });
  const sheet = [1, 2].flatMap((cylinder) => [
    lift(cylinder, 'intake', 'light'),
    lift(cylinder, 'intake-2', 'running'),
  ]);
  const engine = { ...PLAIN.engine, cylinders: 4, intakeValves: 2, exhaustValves: 2 };
  const [judgement] = unlikeSprings(rowsOf(on(sheet, { engine })));
  const [light, running] = ['intake', 'intake-2'].map((valve) =>
    sheet.filter((each) => each.valve === valve),
  );
  const named = (own: readonly SheetEvidence[] = []) => own.map(placeOf).join(' and ');
  expect(judgement?.sentence).toContain(
    `The intake valves of ${named(light)} were read on a light spring, those of ${named(running)} on the running one.`,
  );
  expect(judgement?.sentence).not.toMatch(/of 1 and 1|of 1 and 2 were/);
});

describe('what no dial read', () => {
  test('a rule tells no valve from another: that is said, and a dial is next', () => {
    const ruled = sides(1.6).map((each) => ({ ...each, tool: 'rule' as const }));
    const { headlines: said, next } = assess(on(ruled));
    expect(said[0]?.sentence).toMatch(/read with a rule, .* First: the same lifts with a dial indicator\./);
    expect(next).toMatchObject({ action: 'read-with-indicator' });
  });

  test('a caliper has no hand to read backwards, nor turns to miss', () => {
    // .540 among .560: backwards on a dial of .100; .460: a turn.
    for (const lift of [0.54, 0.46]) {
      const sheet = sides(1.6).map((each) =>
        each.cylinder === 5 && each.valve === 'intake' && each.kind === 'valve-lift'
          ? { ...each, reading: { value: lift * IN } }
          : each,
      );
      const calipered = sheet.map((each) =>
        each.kind === 'valve-lift' ? { ...each, tool: 'caliper' as const } : each,
      );
      expect(codes(on(sheet)).length).toBeGreaterThan(0);
      expect(codes(on(calipered))).not.toContain('hand-read-backwards');
      expect(codes(on(calipered))).not.toContain('turn-miscounted');
    }
  });
});
