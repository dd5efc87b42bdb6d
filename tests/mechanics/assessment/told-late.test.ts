import { describe, expect, test } from 'vitest';
import type { Evidence, SetUpEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { memberOf } from '../../../shared/member.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { cleanSetUp, IN, lobe, stamped } from './plain.ts';
import { answer, headline, knownNow, readBefore, statement, UNSAID } from './told-late.ts';

const assess = assessAsTold('told-late');

describe('each fact told later', () => {
  const { id: _, number: __, ...facts } = cleanSetUp;
  const WRONG: Partial<SetUpEvidence> = {
    cylinder: 2,
    valve: 'exhaust',
    armId: 'arm-b',
    spring: 'running',
    lifter: 'hydraulic',
    lash: 'set',
    restsOn: 'valve-tip',
    alignment: 'leaning',
    graduation: 0.0005 * IN,
    perTurn: 0.2 * IN,
    travel: 0.5 * IN,
    pushedIn: 0.1 * IN,
    errorLimit: 0.01 * IN,
    lobeSource: 'caliper',
    lobeErrorLimit: 0.01 * IN,
  };

  test.each(Object.entries(WRONG))('%s was %s at first: as if it had been right', (fact, wrong) => {
    const right = readBefore();
    const late = {
      ...readBefore({ [fact]: wrong }),
      statements: [statement({ [fact]: memberOf(facts, fact) })],
    };
    const { details: told, ...said } = assess(late);
    const { details: atOnce, ...expected } = assess(right);
    expect(said).toEqual(expected);
    expect(told.setUps).toEqual(atOnce.setUps);
  });

  test('all that was not said, told in one', () => {
    const { spring, lifter, lash, alignment } = cleanSetUp;
    const late = { ...readBefore(UNSAID), statements: [statement({ spring, lifter, lash, alignment })] };
    expect(headline(readBefore(UNSAID))).toContain('not yet set against the 1.6 stamped on it');
    expect(headline(late)).toContain('agrees with the 1.6 stamped on it');
  });

  test('a later statement goes before an earlier one, and both before what was said at first', () => {
    const two = [statement({ spring: 'running' }, 50), statement({ spring: 'light' }, 51)];
    expect(knownNow({ ...readBefore(UNSAID), statements: two })?.spring).toBe('light');
    expect(knownNow({ ...readBefore(UNSAID), statements: two.toReversed() })?.spring).toBe('light');
  });

  test('an answer goes before an earlier statement, and a statement before an earlier answer', () => {
    const answers = [answer('spring-not-said', 'running')];
    const [before, after] = [statement({ spring: 'light' }, 50), statement({ spring: 'light' }, 70)];
    expect(knownNow({ ...readBefore(UNSAID), answers, statements: [before] })?.spring).toBe('running');
    expect(knownNow({ ...readBefore(UNSAID), answers, statements: [after] })?.spring).toBe('light');
  });

  test('what was no more than a guess is not known after all', () => {
    const late = { ...readBefore(), statements: [{ ...statement({}), notKnown: ['travel' as const] }] };
    expect(knownNow(late)).not.toHaveProperty('travel');
  });
});

describe('mark, sold-as, card, spring, lifter and planned ratio, told after the readings', () => {
  const LATE: readonly (readonly [string, (evidence: Evidence) => Evidence])[] = [
    ['the mark', (evidence) => ({ ...evidence, arms: [stamped('1.6')] })],
    ['sold as', (evidence) => ({ ...evidence, rockers: { ...evidence.rockers, soldAs: 1.6 } })],
    [
      'the card',
      (evidence) => ({ ...evidence, card: { intake: lobe(0.348), exhaust: lobe(0.339), assumedRatio: 1.5 } }),
    ],
    [
      'the springs',
      (evidence) => ({ ...evidence, springs: { installedHeight: 1.9 * IN, seatLoad: 580, rate: 61_000 } }),
    ],
    [
      'the lifter of the engine',
      (evidence) => ({ ...evidence, engine: { ...evidence.engine, lifter: 'solid-flat' } }),
    ],
    ['the planned ratio', (evidence) => ({ ...evidence, rockers: { ...evidence.rockers, planned: 1.7 } })],
    [
      'the state',
      (evidence) => ({
        ...evidence,
        statements: [statement({ spring: 'light', lifter: 'solid', lash: 'zero' })],
      }),
    ],
  ];
  const bare: Evidence = {
    ...readBefore({ spring: 'not-said', lifter: 'not-said', lash: 'not-said' }),
    arms: [stamped('')],
    card: { intake: {}, exhaust: {} },
    rockers: {},
    call: { goal: 'clearances-after-a-change', contact: 'none', engineState: 'apart', closed: false },
  };
  const said = (order: readonly (readonly [string, (evidence: Evidence) => Evidence])[]) =>
    assess(order.reduce((evidence, [, tell]) => tell(evidence), bare));

  test('three orders of telling give one assessment', () => {
    const expected = said(LATE);
    expect(said(LATE.toReversed())).toEqual(expected);
    expect(said([...LATE.slice(3), ...LATE.slice(0, 3)])).toEqual(expected);
  });

  test.each(LATE)('%s, told last, changes what is said of the readings already there', (name, tell) => {
    const others = LATE.filter(([each]) => each !== name);
    const before = others.reduce((evidence, [, each]) => each(evidence), bare);
    const [was, now] = [assess(before), assess(tell(before))];
    expect([now.judgements, now.quantities, now.details.change]).not.toEqual([
      was.judgements,
      was.quantities,
      was.details.change,
    ]);
    expect(now).toEqual(said(LATE));
  });
});
