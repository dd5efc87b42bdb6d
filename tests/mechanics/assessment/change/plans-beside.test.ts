import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../plain-build.ts';
import { heard, setUpOn } from '../whole-sheet.ts';

/** Of a change, with lobes .350 and .362 and no lash known; figures invented. */
const CHANGE: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  springs: { installedHeight: 1.9 * IN, solidHeight: 1.15 * IN, retainerToSeal: 0.65 * IN },
  rockers: { soldAs: 1.5, planned: 1.6, plannedExhaust: 1.5, alsoPlanned: [1.7, 1.75] },
};

const worstOf = (evidence: Evidence): string[] =>
  heard(evidence).all.headlines.flatMap(({ id, sentence }) =>
    id.startsWith('headline:change:worst') ? [sentence.slice(0, 'With the planned 1.75'.length)] : [],
  );

describe('ratios that are thought of beside the one that is to be fitted', () => {
  const { all, headlines } = heard(CHANGE);

  test('are told after it, however short they leave a gap', () => {
    expect(worstOf(CHANGE).map((start) => start.replace(/,.*/, ''))).toEqual([
      'With the planned 1.6',
      'With the planned 1.5',
      'With the planned 1.7',
      'With the planned 1.75',
    ]);
  });

  test('are not to be fitted, and what is next is of the plan itself', () => {
    expect(all.notToRun.map(({ beside }) => beside)).toContain(true);
    expect(all.next?.action).not.toBe('do-not-fit');
  });

  test('a side that is kept as it is says which, and is not asked about', () => {
    const kept = headlines.filter((each) => each.includes('nothing changes'));
    expect(kept).toEqual([
      'With the planned 1.5 nothing changes on the exhaust valves: it is the 1.5 they are sold as.',
    ]);
  });

  test('with nothing to be fitted but one short ratio that ratio is what is next', () => {
    const alone = { ...CHANGE, rockers: { soldAs: 1.5, planned: 1.75 } };
    expect(heard(alone).all.next?.action).toBe('do-not-fit');
  });
});

test('a gap that has another limit on each side is told against each, with its own figure', () => {
  const lobe = (lobeLift: number, centreline: number) => ({
    lobeLift: lobeLift * IN,
    centreline: centreline * DEG,
    durations: [
      { atLift: 0.05 * IN, duration: 232 * DEG },
      { atLift: 0.02 * IN, duration: 268 * DEG },
    ],
  });
  const evidence: Evidence = {
    ...CHANGE,
    engine: { ...CHANGE.engine, stroke: 3.48 * IN, rodLength: 5.7 * IN, valveAngle: 20 * DEG },
    card: { assumedRatio: 1.5, intake: lobe(0.34, 106), exhaust: lobe(0.355, 110) },
    rockers: { soldAs: 1.5, planned: 1.6 },
    taken: {
      intake: { closedGapAtTdc: 0.18 * IN, pistonFloor: 'pocket' },
      exhaust: { closedGapAtTdc: 0.17 * IN, pistonFloor: 'pocket' },
    },
  };
  const { all, headlines } = heard(evidence);
  const short = all.details.change.map(({ gaps }) => gaps.find(({ name }) => name === 'piston-to-valve'));
  expect(new Set(short.map((gap) => gap?.limit.value)).size).toBe(2);
  expect(short.map((gap) => gap?.word)).toEqual(['short', 'short']);
  expect(headlines[0]).toMatch(
    /piston to valve on the exhaust valves: short, [^.]*\.\d+[^:]*against \.100 in\. Piston to valve on the intake valves: short, [^:]*against \.080 in/,
  );
  const fit = all.notToRun.filter(({ what }) => what === 'fit');
  expect(new Set(fit.map(({ id }) => id)).size).toBe(fit.length);
  expect(fit.length).toBe(2);
});

test('before and after of one ratio are one figure: the interval of the ratio before is as uneven as the one after', () => {
  const kept = heard(CHANGE).all.details.change.find(({ key }) => key === 'exhaust');
  const seal = kept?.gaps.find(({ name }) => name === 'retainer-to-seal');
  expect(seal?.before).toEqual(seal?.after);
});

test('a ratio before that was read on the running spring allows for what bends, .040 in at the most on studs', () => {
  const gapsOf = (spring: 'light' | 'running') => {
    const evidence = {
      ...CHANGE,
      rockers: { soldAs: 1.5, planned: 1.6 },
      ...setUpOn(1, undefined, [0.525, 0.525, 0.525], { spring }),
    };
    const { gaps } = heard(evidence).all.details.change.find(({ key }) => key === '1-intake') ?? { gaps: [] };
    return gaps.find(({ name }) => name === 'retainer-to-seal')?.before;
  };
  const less = ((gapsOf('light')?.low ?? 0) - (gapsOf('running')?.low ?? 0)) / IN;
  expect(less).toBeGreaterThan(0.03);
  expect(less).toBeLessThan(0.041);
  expect(gapsOf('running')?.high).toBeCloseTo(gapsOf('light')?.high ?? 0, 4);
});

test('parts that are expected to touch are not fitted before that is measured, though the word is close', () => {
  const evidence: Evidence = {
    ...CHANGE,
    rockers: { soldAs: 1.5, planned: 1.6, pivotToTip: 1.46 * IN },
    sheet: [read(4, 'exhaust', 'pushrod-to-head', 0.045, { arms: 'before', tool: 'wire' })],
  };
  const { all } = heard(evidence);
  const gap = all.details.change
    .find(({ key }) => key === '4-exhaust')
    ?.gaps.find(({ name }) => name === 'pushrod-to-head');
  expect(gap?.word).toBe('close');
  expect(gap?.after?.value).toBeLessThan(0);
  expect(all.notToRun.map(({ sentence }) => sentence).join()).toMatch(
    /Don’t fit the planned 1\.6 before it is measured: pushrod to head on 4 exhaust is close, the pushrod would be \.016 in/,
  );
  expect(all.next?.sentence).toMatch(/^Measure the gap on a mock-up/);
});
