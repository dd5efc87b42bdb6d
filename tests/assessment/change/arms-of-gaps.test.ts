import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../../mechanics/assessment/plain-build.ts';
import { pointsOf, scanEvidence } from '../../mechanics/assessment/scan-evidence.ts';

/*
 * A gap read with the arms that are on says nothing of those that are planned but by what the ratio changes: gap less the
 * lobe's lift there times the change (trade practice 2.8). Least .090 with the 1.5, lobe .110 there: .090 − .011 = .079
 * with a 1.6, .090 − .022 = .068 with a 1.7. The engine is invented.
 */
const GAPS = [0.11, 0.098, 0.09, 0.097, 0.11];
const SCAN = scanEvidence(pointsOf(GAPS.map((gap, index) => [4 * index, gap])), { line: 5 });
const OLD = { id: 'old', name: 'old arm', ratioStamp: '1.5', otherNumber: '', boxLabel: '' };

const build = (more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.34 * IN }, exhaust: {} },
  springs: {},
  rockers: { soldAs: 1.5, planned: 1.6, alsoPlanned: [1.7] },
  taken: { intake: { lobeLiftAtClosest: 0.11 * IN }, exhaust: {} },
  scans: [SCAN],
  ...more,
});

const piston = (evidence: Evidence) =>
  assess(evidence)
    .details.change.filter(({ about }) => about.of === 'valve')
    .map(({ plan, gaps }) => {
      const gap = gaps.find(({ name }) => name === 'piston-to-valve');
      return [plan, gap?.after?.basis, Number(((gap?.after?.value ?? 0) / IN).toFixed(3))];
    });

describe('a gap read with the arms that are on, and others planned', () => {
  test.each([
    ['the arm that sat there is stamped', build({ arms: [OLD], scans: [{ ...SCAN, armId: 'old' }] })],
    ['what they are sold as is another than what is planned', build()],
    [
      'nothing is said of the arms, and the ratio is still being chosen',
      build({
        call: { ...PLAIN.call, goal: 'choose-ratio' },
        rockers: { planned: 1.6, alsoPlanned: [1.7] },
      }),
    ],
  ])('is calculated for each plan: %s', (_, evidence) => {
    expect(piston(evidence)).toEqual([
      [1.6, 'calculated', 0.079],
      [1.7, 'calculated', 0.068],
    ]);
    const { headlines, judgements } = assess(evidence);
    const said = headlines.map(({ sentence }) => sentence).join('\n');
    expect(said).not.toMatch(/measured|clear, \.090/);
    expect(said).toMatch(/With the planned 1\.7.*\.068/);
    // The engine as it is keeps its own word, and each judgement its own id.
    expect(judgements.find(({ id }) => id === 'gap:piston-to-valve:1-intake')?.sentence).toMatch(
      /^Piston to valve, 1 intake with the arms that are on now: \.090 in/,
    );
    expect(new Set(judgements.map(({ id }) => id)).size).toBe(judgements.length);
  });

  test('the planned arm on the valve, by its stamp, is measured; the other plan says nothing of it', () => {
    const arms = [{ ...OLD, id: 'new', ratioStamp: '1.6' }];
    expect(piston(build({ arms, scans: [{ ...SCAN, armId: 'new' }] }))[0]).toEqual([1.6, 'measured', 0.09]);
    const seven = [{ ...OLD, id: 'new', ratioStamp: '1.7' }];
    expect(piston(build({ arms: seven, scans: [{ ...SCAN, armId: 'new' }] }))[1]).toEqual([
      1.7,
      'measured',
      0.09,
    ]);
  });

  test('a gap that is short with what is on stops it all the same', () => {
    const evidence = build({ scans: [], sheet: [read(1, 'intake', 'coil-bind', 0.03)] });
    expect(assess(evidence).stop.map(({ code }) => code)).toEqual(['gap-short']);
  });

  test('without a plan what is on is what is judged', () => {
    expect(piston(build({ rockers: { soldAs: 1.5 } }))).toEqual([[undefined, 'measured', 0.09]]);
  });
});
