import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, PassEvidence, SetUpEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { ofRatio } from '../../../server/mechanics/assessment/missing/of-ratio.ts';
import { ratioKnown, ratioRead } from '../../../server/mechanics/assessment/ratio/ratio.ts';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read, SET_UP } from './plain-build.ts';

/*
 * Lifts read without an indicator. How far off a tool may be is common practice, no published source; what follows
 * from it is by hand, beside each: u = limit/√3 each, u_R = √(u_V² + R²u_L²)/L (JCGM 100:2008, 4.3.7 and 5.1.2).
 */

const pass = (kind: PassEvidence['kind'], number: number, inches: number): PassEvidence => ({
  id: `${kind}-${number}`,
  line: number + (kind === 'lobe-lift' ? 0 : 10),
  standing: true,
  setUpId: SET_UP.id,
  kind,
  pass: number,
  value: inches * IN,
  counted: false,
  readAs: `${inches} in`,
});

type How = Pick<SetUpEvidence, 'tool' | 'lobeSource'> & {
  readonly within: number;
  readonly lobeWithin: number;
};
const RULE: How = { tool: 'rule', lobeSource: 'rule', within: 0.016, lobeWithin: 0.016 };
const CALIPER: How = { tool: 'caliper', lobeSource: 'depth-bar', within: 0.005, lobeWithin: 0.005 };

function built(how: How, lifts: readonly number[], lobes: readonly number[]): Evidence {
  const { within, lobeWithin, ...set } = how;
  return {
    ...PLAIN,
    setUps: [{ ...SET_UP, ...set, errorLimit: within * IN, lobeErrorLimit: lobeWithin * IN }],
    passes: [
      ...lobes.map((lobe, index) => pass('lobe-lift', index + 1, lobe)),
      ...lifts.map((lift, index) => pass('valve-lift', index + 1, lift)),
    ],
  };
}
const first = (evidence: Evidence) => {
  const [setUp] = assess(evidence).details.setUps;
  if (setUp?.result === undefined) throw new Error('there is no ratio');
  return { ...setUp, result: setUp.result };
};
const halfOf = ([low, high]: readonly [number, number]) => (high - low) / 2;
const wordOf = (evidence: Evidence) =>
  assess(evidence).judgements.find(({ id }) => id.endsWith(':sold-as'))?.word;

test('the small hand is looked at on a dial, and nowhere else', () => {
  const sentence = (how: Partial<SetUpEvidence>) => {
    const evidence = built({ ...CALIPER, ...how }, [0.56], [0.35]);
    const { explained } = ratioRead(evidence, ratioKnown(evidence), []);
    return ofRatio(evidence, explained).find(({ code }) => code.startsWith('valve-passes'))?.ask;
  };
  expect(sentence({})).toBe('Read the valve lift of 1 intake, two more passes.');
  expect(sentence({ tool: 'indicator' })).toBe(
    'Read the valve lift of 1 intake, two more passes, small hand first.',
  );
});

describe('a rule', () => {
  test('±.016 on .350 and .560 is ±.0998 of ratio: 1.96 · .016/√3 · √(1 + 1.6²)/.350', () => {
    const { result } = first(built(RULE, [0.56], [0.35]));
    const byHand = ((1.96 * 0.016) / Math.sqrt(3) / 0.35) * Math.sqrt(1 + 1.6 ** 2);
    // The division of the scale and the repeat of a reading come on top, and are small beside it.
    expect(halfOf(result.interval95)).toBeGreaterThanOrEqual(byHand - 1e-4);
    expect(halfOf(result.interval95)).toBeLessThan(byHand * 1.1);
  });

  test('cannot tell 1.5 from 1.6 on .350: .035 in of lift apart, and it says so', () => {
    for (const lift of [0.525, 0.56]) {
      const evidence = built(RULE, [lift], [0.35]);
      expect(wordOf(evidence)).not.toBe('differs');
      expect(first(evidence).cautions[0]).toMatch(
        /^Rule, within \.016 in: .* On this lobe 1\.5 and 1\.6 are \.035 in of valve lift apart, and it cannot tell these two apart\./,
      );
    }
  });

  test('three passes of it know no more than one: they share its error', () => {
    const one = halfOf(first(built(RULE, [0.56], [0.35])).result.interval95);
    const three = halfOf(first(built(RULE, [0.56, 0.56, 0.56], [0.35, 0.35, 0.35])).result.interval95);
    expect(three).toBeGreaterThan(0.9 * one);
    const weighed = (times: number) => {
      const readings = Array.from({ length: times }, (_, index) => ({
        of: 'valve-lift' as const,
        value: 0.56,
        pass: index + 1,
        setUp: 0,
        spring: 'light' as const,
        lifter: 'solid' as const,
        errorLimit: 0.016,
      }));
      return halfOf(
        explainReadings({ nominals: [1.5, 1.6], cardLobeLift: 0.35, lash: 'zero', readings }).ratio
          .interval95,
      );
    };
    expect(weighed(3)).toBeGreaterThan(0.9 * weighed(1));
  });

  test('without an error limit a reading is weighed as ever', () => {
    const reading = {
      of: 'valve-lift',
      value: 0.557,
      pass: 1,
      setUp: 0,
      spring: 'light',
      lifter: 'solid',
    } as const;
    const input = {
      nominals: [1.5, 1.55, 1.6, 1.65, 1.7],
      mark: 1.6,
      cardLobeLift: 0.348,
      otherLobeLift: 0.339,
      lash: 'zero',
      readings: [reading],
    } as const;
    // The first worked case of the design note: 1.582 to 1.624, median 1.602, each told to ±.001.
    const { ratio } = explainReadings(input);
    expect(Math.abs(ratio.interval95[0] - 1.582)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(ratio.interval95[1] - 1.624)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(ratio.median - 1.602)).toBeLessThanOrEqual(0.001);
  });

  test('passes as far apart as it may be off are no slip of a turn', () => {
    const said = assess(built(RULE, [0.56, 0.575], [0.35]));
    expect(said.details.setUps[0]?.lacks).toEqual([]);
    expect(said.questions.map(({ code }) => code)).not.toContain('turn-miscounted');
  });
});

describe('a caliper', () => {
  test('±.005 tells 1.5 from 1.6 on .350, and asks nothing that only a dial raises', () => {
    // Within 2 % of 1.6 is ±.032. With a usual scatter of .0012 in (common practice, no published source)
    // 1.96·√(.005²/3 + .0012²/n)·√(1 + 1.6²)/.350 is .033 from one pass and .031 from three.
    expect(wordOf(built(CALIPER, [0.56], [0.35]))).toBe('cannot-tell');
    const evidence = built(CALIPER, [0.56, 0.56, 0.56], [0.35, 0.35, 0.35]);
    const said = assess(evidence);
    expect(wordOf(evidence)).toBe('agrees');
    expect(first(evidence).cautions[0]).toContain('so that it can tell these two apart');
    const codes = said.questions.map(({ code }) => code);
    for (const code of ['turn-miscounted', 'plunger-tilted', 'hand-read-backwards', 'zero-not-returned'])
      expect(codes).not.toContain(code);
    expect(said.explanations[0]?.summary).not.toContain('Looked at');
    expect(said.next?.action).not.toBe('align-plunger');
  });
});

describe('a guess', () => {
  const GUESS: How = { tool: 'guess', lobeSource: 'card', within: 0.06, lobeWithin: 0.0025 };

  test('is kept and told as one; no word rests on it, and nothing is calculated with it', () => {
    const evidence = built(GUESS, [0.56], []);
    const said = assess(evidence);
    expect(wordOf(evidence)).toBeUndefined();
    expect(first(evidence).lacks).toEqual(['a reading of the valve lift with a tool: this one is a guess']);
    expect(said.details.change.flatMap(({ after }) => after?.from ?? [])).not.toContain('measured');
    expect(said.headlines.map(({ sentence }) => sentence).join()).toContain('this one is a guess');
  });

  test('of a gap gives no word, whatever it says', () => {
    for (const gap of [0.01, 0.3]) {
      const sheet = [read(1, 'intake', 'retainer-to-seal', gap, { tool: 'guess' })];
      const own = assess({ ...PLAIN, sheet }).judgements.filter(({ restsOn }) =>
        restsOn.includes(sheet[0]?.id ?? ''),
      );
      expect(own.map(({ word }) => word)).toEqual(own.map(() => undefined));
    }
  });

  test('of a lift makes no valve odd, and neither does a rule', () => {
    for (const tool of ['guess', 'rule']) {
      const lifts = [0.56, 0.561, 0.56, 0.52].map((lift, index) =>
        read(index + 1, 'intake', 'valve-lift', lift, { tool }),
      );
      expect(assess({ ...PLAIN, sheet: lifts }).judgements.map(({ word }) => word)).not.toContain('odd');
    }
    const dial = [0.56, 0.561, 0.56, 0.52].map((lift, index) =>
      read(index + 1, 'intake', 'valve-lift', lift),
    );
    expect(assess({ ...PLAIN, sheet: dial }).judgements.map(({ word }) => word)).toContain('odd');
  });
});
