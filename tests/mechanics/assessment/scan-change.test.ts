import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { type ExactEngine, exactLeast, gapAt, lobeAt } from '../helpers/exact-gap.ts';
import { PLAIN } from './plain-build.ts';
import { pointsOf, scanEvidence, toThousandths } from './scan-evidence.ts';

const ENGINE: ExactEngine = {
  stroke: 3.48,
  rod: 5.7,
  lobeLift: 0.35,
  ratio: 1.5,
  centreline: 106,
  duration: 290,
  closedGap: 0.36,
};
const OLD = exactLeast(ENGINE);
const NEW = exactLeast({ ...ENGINE, ratio: 1.7 });

/** The card of that lobe: the durations that the invented cosine has at .006, .020, .050 and .100 of lift. */
const durations = [0.006, 0.02, 0.05, 0.1].map((lift) => {
  const half = (Math.acos((2 * lift) / ENGINE.lobeLift - 1) * ENGINE.duration) / (2 * Math.PI);
  return { atLift: lift * IN, duration: 2 * half * DEG };
});

const scan = (angles: readonly number[], more: Partial<ScanEvidence> = {}) => {
  const points = pointsOf(
    angles.map((at) => [at, gapAt(ENGINE, at)]),
    toThousandths,
  );
  return scanEvidence(points, { id: 'scan-1', line: 7, arms: 'before', ...more });
};

const upTo = (last: number) => Array.from({ length: last / 2 + 1 }, (_, index) => 2 * index);

const build = (scans: readonly ScanEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  card: {
    assumedRatio: 1.5,
    intake: { lobeLift: 0.35 * IN, centreline: 106 * DEG, durations },
    exhaust: {},
  },
  rockers: { planned: 1.7 },
  scans,
  ...more,
});

const pistonGap = (evidence: Evidence) =>
  assess(evidence)
    .details.change.find(({ about }) => about.of === 'valve' && about.valve === 'intake')
    ?.gaps.find(({ name }) => name === 'piston-to-valve');

/** The exact least with the higher ratio is found by itself, from the same formulas and with no scan. */
describe('a scan at the old ratio, and a planned one', () => {
  test('the lobe at each angle times the change, and the least found again where it moved to', () => {
    // It moves, and costs less than the whole lobe would: else this engine would prove nothing.
    expect(NEW.angle - OLD.angle).toBeGreaterThan(0.5);
    const gap = pistonGap(build([scan(upTo(30))]));
    expect((gap?.before?.value ?? 0) / IN).toBeCloseTo(OLD.gap, 3);
    // The card's lobe between its durations is a model: within .004 of the exact one here.
    expect(Math.abs((gap?.after?.value ?? 0) / IN - NEW.gap)).toBeLessThan(0.004);
    const atOldPlace = OLD.gap - lobeAt(ENGINE, OLD.angle) * 0.2;
    expect((gap?.after?.value ?? 0) / IN).toBeLessThan(atOldPlace);
    expect(gap?.because.join()).toContain('estimated from the scan');
    expect(gap?.because.join()).toContain('it is calculated: measure it before it runs');
  });

  test('where the least moves past the end of the scan there is none, and which way to go on is said', () => {
    // Read to 8°: past the old least and rising; with 1.9 it still falls there.
    const angles = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    expect(OLD.angle).toBeLessThan(7.5);
    expect(exactLeast({ ...ENGINE, ratio: 1.9 }).angle).toBeGreaterThan(8);
    const gap = pistonGap(build([scan(angles)], { rockers: { planned: 1.9 } }));
    expect([gap?.word, gap?.lacks.map(({ said }) => said)]).toEqual([
      undefined,
      [expect.stringContaining('the scan read on at later crank angles than 8° after TDC')],
    ]);
  });

  test('on a lifter that sinks the estimate has no word either', () => {
    const gap = pistonGap(build([scan(upTo(30), { lifter: 'hydraulic' })], { rockers: { planned: 1.52 } }));
    expect([gap?.word, gap?.lacks.map(({ said }) => said).join()]).toEqual([
      undefined,
      expect.stringContaining('sinks'),
    ]);
  });

  test('lash that was in it drops out of what the ratio changes', () => {
    const lash = 0.012 * IN;
    const withLash = scan(upTo(30), {
      lash: 'set',
      lashSetting: lash,
      points: upTo(30).map((at) => ({
        crankAngle: at * DEG,
        gap: { value: gapAt(ENGINE, at) * IN + Math.min(lash, lobeAt(ENGINE, at) * 1.5 * IN) },
        readAs: 'with lash',
      })),
    });
    const [zero, set] = [pistonGap(build([scan(upTo(30))])), pistonGap(build([withLash]))];
    expect(((set?.after?.value ?? 0) - (zero?.after?.value ?? 0)) / IN).toBeCloseTo(0.012, 3);
    // The low end is that without lash, whichever way it was read.
    expect(((set?.after?.low ?? 0) - (zero?.after?.low ?? 0)) / IN).toBeCloseTo(0, 3);
  });
});

describe('springs that would bind before anything is changed', () => {
  const springs = { ...PLAIN.springs, installedHeight: 1.65 * IN, solidHeight: 1.15 * IN };
  // 1.650 − .350 × 1.5 − 1.150 = −.025 (Installed less net lift less solid height: common practice, no source).
  const bound = (engineState: Evidence['call']['engineState'], more: Partial<Evidence> = {}) =>
    build([], { springs, call: { ...PLAIN.call, goal: 'choose-ratio', engineState }, ...more });
  const said = (evidence: Evidence) => {
    const { questions, judgements } = assess(evidence);
    return {
      question: questions.find(({ code }) => code === 'springs-bind-already'),
      coil: judgements.find(({ id }) => id.startsWith('gap:coil-bind:intake')),
    };
  };

  test('an engine that ran contradicts it: the heights are asked, and the change has no word', () => {
    const { question, coil } = said(bound('has-run'));
    expect(question).toMatchObject({ weight: 'strong', step: 'consequences' });
    expect(question?.size).toContain('go solid .025 in');
    expect(question?.size).toContain('The engine ran with them');
    expect(coil?.word).toBeUndefined();
    expect(coil?.sentence).toContain('no word yet');
  });

  test('looked at and right after all, the change is judged', () => {
    const { question } = said(bound('has-run'));
    const answers: Evidence['answers'] = [
      {
        id: 'answer-1',
        line: 90,
        code: 'springs-bind-already',
        question: question?.ask ?? '',
        questionId: question?.id ?? '',
        answer: 'Looked: it does not fit',
        found: false,
      },
    ];
    expect(said(bound('has-run', { answers })).coil?.word).toBe('short');
  });

  test('of an engine that never ran it is asked before parts are changed, and short stays short', () => {
    const { question, coil } = said(bound('never-run'));
    expect([question?.isNext, coil?.word]).toEqual([true, 'short']);
    expect(assess(bound('never-run')).next?.action).toBe('springs-bind-already');
  });

  test('springs that clear at the old ratio are not asked, whatever the new one does', () => {
    const free = bound('has-run', { springs: { ...springs, installedHeight: 1.7 * IN } });
    expect(said(free).question).toBeUndefined();
  });
});
