import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  ArmEvidence,
  Evidence,
  PassEvidence,
  SetUpEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read, SET_UP } from '../../mechanics/assessment/plain-build.ts';

/*
 * What is worked out is of the arm that sits on the valve now. By hand, lobe .340, lash .016: with A, 1.500, net lift .494;
 * with B, 1.600, .528. Room to bind 1.750 − 1.160 less it: .096 and .062; to the seal .580 less it: .086 and .052; piston
 * .090 read with A, .110 of lobe there: .090 − .011 = .079 with B. The engine is invented.
 */
const arm = (id: string, ratioStamp: string): ArmEvidence => ({
  id,
  name: id,
  ratioStamp,
  otherNumber: '',
  boxLabel: '',
});
const setUp = (id: string, armId: string): SetUpEvidence => ({
  ...SET_UP,
  id,
  armId,
  lobeSource: 'indicator',
});
const passes = (setUpId: string, lobe: number, valve: number): PassEvidence[] =>
  [1, 2, 3].flatMap((pass) =>
    (
      [
        ['lobe-lift', lobe],
        ['valve-lift', valve],
      ] as const
    ).map(([kind, value]) => ({
      id: `${setUpId}-${kind}-${pass}`,
      line: pass,
      standing: true,
      setUpId,
      kind,
      pass,
      value: value * IN,
      zeroReturn: 0,
      counted: true,
      readAs: `${value} in`,
    })),
  );
const READ_A = { setUps: [setUp('s1', 'A')], passes: passes('s1', 0.34, 0.51) };
const on = (armId: string, more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.34 * IN, lash: 0.016 * IN }, exhaust: {} },
  springs: { installedHeight: 1.75 * IN, solidHeight: 1.16 * IN, retainerToSeal: 0.58 * IN },
  rockers: { soldAs: 1.5 },
  taken: { intake: { lobeLiftAtClosest: 0.11 * IN }, exhaust: {} },
  arms: [arm('A', '1.5'), arm('B', '1.6')],
  seats: [{ cylinder: 1, valve: 'intake', armId }],
  sheet: [read(1, 'intake', 'piston-to-valve', 0.09, { armId: 'A' })],
  ...READ_A,
  ...more,
});
const gaps = (evidence: Evidence, key = '1-intake') =>
  Object.fromEntries(
    (assess(evidence).details.change.find((each) => each.key === key)?.gaps ?? [])
      .filter(({ after }) => after !== undefined)
      .map(({ name, after, word }) => [name, [Number(((after?.value ?? 0) / IN).toFixed(3)), word]]),
  );

describe('after a swap', () => {
  test('with A on, A is what is worked out', () => {
    expect(gaps(on('A'))).toEqual({
      'coil-bind': [0.096, 'clear'],
      'retainer-to-seal': [0.086, 'clear'],
      // With its lash of .016 in it, .074 would be left: nobody has said that it was taken up.
      'piston-to-valve': [0.09, 'close'],
    });
  });

  const WITH_B = {
    'coil-bind': [0.062, 'close'],
    'retainer-to-seal': [0.052, 'close'],
    'piston-to-valve': [0.079, 'close'],
  };

  test('with B on and not read yet, by its stamp; the gap that A was read with is no word on B', () => {
    expect(gaps(on('B'))).toEqual(WITH_B);
    const { judgements, headlines } = assess(on('B'));
    expect(judgements.find(({ id }) => id === 'gap:piston-to-valve:1-intake')?.word).toBeUndefined();
    expect(headlines.map(({ sentence }) => sentence).join(' ')).not.toMatch(/measured 1\.500/);
  });

  test.each([
    ['in the order in which it was done', 1],
    ['the other way round', -1],
  ])('with B read, B: %s', (_, order) => {
    const both = [
      { setUp: setUp('s1', 'A'), own: passes('s1', 0.34, 0.51) },
      { setUp: setUp('s2', 'B'), own: passes('s2', 0.34, 0.544) },
    ];
    const told = order === 1 ? both : both.toReversed();
    const evidence = on('B', {
      setUps: told.map((each) => each.setUp),
      passes: told.flatMap(({ own }) => own),
    });
    expect(gaps(evidence)).toEqual(WITH_B);
    expect(gaps({ ...evidence, rockers: {} })).toEqual(WITH_B);
  });

  test('an arm that nobody can name leaves the ratio out, and not the old one in', () => {
    const evidence = on('C', { arms: [arm('A', '1.5'), arm('C', '')], rockers: {} });
    expect(assess(evidence).details.change.find(({ key }) => key === '1-intake')?.after).toBeUndefined();
  });
});

/** Lobe .400, lash .016, sold as 1.55: net .604; 1.799 − 1.150 − .604 = .045, close. 1 intake reads .594/.400 = 1.485: .071. */
describe('one valve read says nothing of the others', () => {
  const evidence = on('A', {
    arms: [],
    seats: [],
    sheet: [],
    card: { assumedRatio: 1.5, intake: { lobeLift: 0.4 * IN, lash: 0.016 * IN }, exhaust: {} },
    springs: { installedHeight: 1.799 * IN, solidHeight: 1.15 * IN },
    rockers: { soldAs: 1.55 },
    setUps: [{ ...SET_UP, id: 's1', lobeSource: 'indicator' }],
    passes: passes('s1', 0.4, 0.594),
  });

  test('the others keep what they had, and the headline is theirs', () => {
    expect(gaps(evidence, 'intake')).toEqual(gaps({ ...evidence, setUps: [], passes: [] }, 'intake'));
    expect(gaps(evidence, 'intake')).toEqual({ 'coil-bind': [0.045, 'close'] });
    const [first] = assess(evidence).headlines;
    expect(first?.sentence).toMatch(
      /^Worst first: room to coil bind on the other intake valves.*close, \.045/,
    );
  });

  test('with every valve of the side read there are no others', () => {
    const one = { ...evidence, engine: { ...evidence.engine, cylinders: 1 } };
    expect(assess(one).details.change.map(({ key }) => key)).toEqual(['1-intake']);
  });

  test('a second intake of a cylinder that was read is told by itself', () => {
    const second = { ...evidence, sheet: [read(1, 'intake-2', 'coil-bind', 0.1)] };
    expect(assess(second).details.change.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['1-intake', '1-intake-2']),
    );
  });
});
