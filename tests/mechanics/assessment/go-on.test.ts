import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, PassEvidence, SetUpEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, SET_UP } from './plain-build.ts';

const lift = (inches: number, at: number, setUpId = SET_UP.id): PassEvidence => ({
  id: `${setUpId}-${at}`,
  line: at,
  standing: true,
  setUpId,
  kind: 'valve-lift',
  pass: at,
  value: inches * IN,
  counted: true,
  readAs: `${inches} in`,
});
const build = (first: Partial<SetUpEvidence>, second?: Partial<SetUpEvidence>): Evidence => ({
  ...PLAIN,
  engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' },
  arms: [{ id: 'A', name: 'arm A', ratioStamp: '1.6', otherNumber: '', boxLabel: '' }],
  seats: [{ cylinder: 1, valve: 'intake', armId: 'A' }],
  setUps: [
    { ...SET_UP, ...first },
    ...(second === undefined ? [] : [{ ...SET_UP, id: 'second', number: 2, ...second }]),
  ],
  passes: [0.545, 0.5455, 0.545].map((inches, index) => lift(inches, index + 1)),
});
const next = (evidence: Evidence) => {
  const found = assess(evidence).next;
  return [found?.action.split(':')[0], found?.sentence];
};

describe('a set-up that is begun as the reading wants it', () => {
  test('on a solid lifter, after a hydraulic one: it is gone on with', () => {
    const [action, sentence] = next(build({ lifter: 'hydraulic' }));
    expect(action).toBe('light-spring-solid-lifter');
    expect(sentence).toMatch(/take a reading on a solid or locked lifter/);
    expect(next(build({ lifter: 'hydraulic' }, {}))).toEqual([
      'go-on',
      '1 intake: go on with set-up 2, which has the light spring and solid lifter, at zero lash: read the valve lift, three passes, small hand first.',
    ]);
  });

  test('on another valve, with nothing read of it yet: it is read before anything is looked up', () => {
    const evidence = build({}, { valve: 'exhaust' });
    const both: Evidence = {
      ...evidence,
      engine: PLAIN.engine,
      arms: [],
      seats: [],
      setUps: evidence.setUps.map(({ armId: _, ...each }) => each),
    };
    expect(next(both)[1]).toBe('Read the valve lift of 1 exhaust, three passes, small hand first.');
  });

  test('at zero lash, after one with its lash in', () => {
    const lashIn = { lash: 'set', lashSetting: 0.012 * IN } as const;
    expect(next(build(lashIn))[0]).toBe('lash-to-zero');
    expect(next(build(lashIn, {}))[0]).toBe('go-on');
  });

  test('one that does not meet it is no help, nor one that was read', () => {
    expect(next(build({ lifter: 'hydraulic' }, { lifter: 'hydraulic' }))[0]).toBe(
      'light-spring-solid-lifter',
    );
    const both = build({ lifter: 'hydraulic' }, {});
    const read = { ...both, passes: [...both.passes, lift(0.56, 1, 'second')] };
    expect(next(read)[0]).not.toBe('go-on');
  });

  test('at zero lash, its lifter not said: no lifter is named, and which it was is asked', () => {
    const lashIn = { lash: 'set', lashSetting: 0.012 * IN } as const;
    const [action, sentence] = next(build(lashIn, { lifter: 'not-said' }));
    expect(action).not.toBe('go-on');
    expect(sentence).not.toContain('not-said');
  });

  test('with no lifter in the engine: it is gone on with, and none is named', () => {
    const lashIn = { lash: 'set', lashSetting: 0.012 * IN } as const;
    const geared = build({ ...lashIn, lifter: 'not-said' }, { lifter: 'not-said' });
    const engine = { cylinders: 4, gear: 'cam-rocker' } as const;
    expect(next({ ...geared, engine })).toEqual([
      'go-on',
      '1 intake: go on with set-up 2, which has the light spring, at zero lash: read the valve lift, three passes, small hand first.',
    ]);
  });

  test('with the plunger parallel, after one that leaned: only what was said is named', () => {
    const leaning = { alignment: 'leaning' } as const;
    expect(next(build(leaning, { spring: 'not-said' }))[1]).toMatch(
      /go on with set-up 2, which has the solid lifter, at zero lash/,
    );
  });
});

describe('the lobe is read at the lifter until it has its passes', () => {
  const lobe = (at: number): PassEvidence => ({ ...lift(0.35, at), id: `lobe-${at}`, kind: 'lobe-lift' });
  const readSoFar = (lobeSource: SetUpEvidence['lobeSource'], lobes: number) => {
    const said = assess({
      ...PLAIN,
      setUps: [{ ...SET_UP, lobeSource }],
      passes: Array.from({ length: lobes }, (_, index) => lobe(index + 1)),
    });
    return [said.next?.sentence, said.next?.reads, said.details.setUps[0]?.reads];
  };

  // Common practice, no published source: three passes of each, and the indicator is moved once.
  test.each(['indicator', 'card'] as const)(
    'what is next and what the set-up is read for are one (%s)',
    (source) => {
      expect(readSoFar(source, 1)).toEqual([
        'Read the lobe lift of 1 intake at the lifter, two more passes.',
        'lobe-lift',
        'lobe-lift',
      ]);
      expect(readSoFar(source, 2)[0]).toBe('Read the lobe lift of 1 intake at the lifter, one more pass.');
      expect(readSoFar(source, 3)).toEqual([
        'Read the valve lift of 1 intake, three passes, small hand first.',
        'valve-lift',
        'valve-lift',
      ]);
    },
  );
});
