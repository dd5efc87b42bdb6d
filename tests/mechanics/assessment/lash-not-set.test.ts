import { describe, expect, test } from 'vitest';
import type { TurnsEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import { about, answering, line, log, toldOf, withLines, workOfLog } from './lash-log.ts';
import { said } from './noise-build.ts';

/* Growth or closing of more than .004 is not ordinary; a valve that sinks closes its gap: common practice, no published source. */
const hot = { engine: 'hot' } as const;
const setAt = line(1, '2026-10-02', 0.02, { moment: 'set', ...hot });
const closed = line(2, '2026-10-20', 0.009, hot);
const setAgain = line(3, '2026-10-21', 0.02, { moment: 'set', ...hot });
const NOISE = 'noise-or-failure';

/** 7/16-20 on a stud at 1.6: one turn of the nut is .05 × (1 + 1.6) at the valve; only its words are looked at here. */
function summed(evidence: Evidence, from: number, to: number): Evidence {
  const set: TurnsEvidence = {
    of: 'turns',
    mount: 'stud-nut',
    pitch: 0.05 * IN,
    ratio: 1.6,
    thread: '7/16-20',
    lifter: 'solid',
    turns: (from - to) / 0.13,
    lashFound: from * IN,
    lashWanted: to * IN,
  };
  const working = { id: 'w8', line: 8, computation: 'adjuster', answer: '', set };
  return { ...evidence, workings: [...evidence.workings, working] };
}

const TURN = /(loosen|tighten) \.\d+ turn/i;

describe('a valve that may be sinking', () => {
  test('has no turn told away, and what a shop finds at its seat is next', () => {
    const told = toldOf(summed(about(log([setAt, closed])), 0.009, 0.02));
    expect(told.told).toMatch(/Nothing is told of these turns yet: 3 exhaust may be sinking into its seat/);
    expect(told.told).not.toMatch(TURN);
    expect(told.next?.sentence).toMatch(/^3 exhaust: Leave the gap alone, and have a qualified shop look/);
    expect(told.details.workings.turnToMake).toBeUndefined();
    // Nor does any page show what it came to.
    expect(told.details.workings.outdated).toMatchObject([{ id: 'w8', waits: true }]);
  });

  test('has no shim told', () => {
    const cold = { engine: 'cold', readAs: '0.11 mm', gap: { value: 0.11 * MM } } as const;
    const was = { engine: 'cold', readAs: '0.28 mm', gap: { value: 0.28 * MM } } as const;
    const shims = about(log([]));
    const bucket: Evidence = {
      ...shims,
      engine: { ...shims.engine, gear: 'bucket', lifter: 'solid-flat', shimStock: [2.5 * MM, 2.6 * MM] },
      card: { lashAt: 'cold', intake: {}, exhaust: { lash: 0.28 * MM } },
      lash: [
        line(1, '2026-08-01', 0, { moment: 'set', shim: 2.7 * MM, ...was }),
        line(2, '2026-10-20', 0, { shim: 2.7 * MM, ...cold }),
      ],
    };
    const told = toldOf(bucket);
    expect(told.told).toMatch(/may be sinking/);
    expect(told.told).not.toMatch(/Shims to (?:order|fit)/);
    expect(told.next?.sentence).toMatch(/have a qualified shop look/);
    const after = toldOf(
      withLines(bucket, line(3, '2026-10-21', 0, { moment: 'set', shim: 2.53 * MM, ...was })),
    );
    expect(after.stops).toMatch(/may be sinking/);
    expect(after.next?.sentence).toMatch(/have a qualified shop look/);
  });

  test.each(['adjuster', NOISE] as const)('%s: set away it stays told until somebody looked', (goal) => {
    const away = about(log([setAt, closed, setAgain]), goal);
    expect(toldOf(away).stops).toMatch(/3 exhaust had closed up at one heat before it was set again/);
    expect(toldOf(away).told).toMatch(
      /set again to \.020 in\. Before that: it closed by \.011 in.*may be sinking.*no setting undoes that/,
    );
    const later = withLines(away, line(4, '2026-11-01', 0.02, hot));
    expect(toldOf(later).stops).toMatch(/may be sinking/);
    for (const answer of ['sound', 'put-right'])
      expect(toldOf(answering(away, 'seat-looked', answer)).stops).not.toMatch(/sinking/);
    expect(toldOf(answering(away, 'seat-looked', 'sound')).told).toMatch(
      /set again to \.020 in\. Before that: it closed by \.011 in.*are sound, as was answered/,
    );
    const worn = toldOf(answering(away, 'seat-looked', 'worn'));
    expect(worn.stops).toMatch(/sinking/);
    expect(worn.told).toMatch(/Valve or seat is worn, as was answered/);
  });

  test('a nut that was answered to have held tells it, before it was set away or after', () => {
    const open = about(log([setAt, { ...closed, nut: 'not-looked' }]));
    const before = withLines(answering(open, 'lash-closed-nut', 'held'), setAgain);
    const after = answering(withLines(open, setAgain), 'lash-closed-nut', 'held');
    expect(toldOf(before).told).toBe(toldOf(after).told);
    expect(toldOf(before).stops).toBe(toldOf(after).stops);
    expect(toldOf(after).stops).toMatch(/may be sinking/);
    expect(toldOf(after).told).not.toMatch(/Did the nut move/);
    const sound = toldOf(answering(after, 'seat-looked', 'sound', 901));
    expect(sound.told).not.toMatch(/Did the nut move/);
    expect(sound.stops).toBe('');
    expect(sound.asked('seat-looked')?.answered).toBeDefined();
  });

  test('whose nut nobody looked at is asked of still, once it was set and read again', () => {
    const open = about(
      log([setAt, { ...closed, nut: 'not-looked' }, setAgain, line(4, '2026-11-01', 0.02, hot)]),
    );
    expect(toldOf(open).told).toMatch(/\.020 in now\. Before that: it closed by \.011 in.*Did the nut move/);
  });

  test('reading it once more without looking at the nut undoes nothing', () => {
    const twice = about(log([setAt, closed, line(3, '2026-10-21', 0.009, { ...hot, nut: 'not-looked' })]));
    expect(toldOf(twice).stops).toMatch(/may be sinking/);
  });
});

describe('valves that closed alike', () => {
  const four = [1, 2, 3, 4].flatMap((cylinder) => [
    line(cylinder, '2026-10-02', 0.02, { id: `s${cylinder}`, cylinder, moment: 'set', ...hot }),
    line(cylinder + 4, '2026-10-20', 0.013, { id: `f${cylinder}`, cylinder, ...hot }),
  ]);

  test('are one finding: what all had in common is asked before seats are looked at', () => {
    const { told, stops, next, codes } = toldOf(about(log(four)));
    expect(told.match(/sinking/g)).toHaveLength(1);
    expect(told).toMatch(/1 exhaust, 2 exhaust, 3 exhaust and 4 exhaust closed by \.007 in, all alike\./);
    expect(stops.split('\n')).toHaveLength(1);
    expect(codes).toContain('lash-closed-alike');
    expect(next?.sentence).toMatch(/^Ask how, by whom, with which feelers and at what heat/);
    const same = answering(about(log(four)), 'lash-closed-alike', 'not-found');
    expect(toldOf(same).next?.sentence).toMatch(/have a qualified shop look at valve and seat/);
    expect(toldOf(same).stops).toMatch(/sinking/);
  });

  test('by unlike amounts are each told by themselves', () => {
    const unlike = four.map((each, at) => (at === 1 ? { ...each, gap: { value: 0.009 * IN } } : each));
    expect(toldOf(about(log(unlike))).codes).not.toContain('lash-closed-alike');
  });
});

describe('a gap that grew, or whose nut moved', () => {
  const grown = line(2, '2026-11-20', 0.027, hot);
  const set = line(1, '2026-11-01', 0.018, { moment: 'set', ...hot });

  test.each(['found', 'not-found'])('answered %s, its turn waits', (answer) => {
    const asked = answering(about(log([set, grown])), 'lash-grew', answer);
    expect(toldOf(summed(asked, 0.027, 0.018)).told).not.toMatch(TURN);
  });

  test('not answered its turn waits, and once it is put right the turn is told', () => {
    const open = summed(about(log([set, grown])), 0.027, 0.018);
    expect(toldOf(open).told).toMatch(/why the gap of 3 exhaust grew is looked into first/);
    expect(toldOf(answering(open, 'lash-grew', 'put-right')).told).toMatch(TURN);
  });

  test('a nut that had moved is looked into before its turn', () => {
    const moved = summed(about(log([line(1, '2026-11-20', 0.027, { ...hot, nut: 'moved' })])), 0.027, 0.018);
    expect(toldOf(moved).told).not.toMatch(TURN);
    expect(workOfLog(moved).mend?.sentence).toMatch(/why the nut moved/);
  });

  test.each([
    ['noise-set-screw', 'loose'],
    ['noise-stud-top', 'domed'],
    ['noise-tip', 'worn'],
  ])('%s %s is put right before its turn', (code, answer) => {
    const alone = about(log([line(1, '2026-11-20', 0.027, hot)]), NOISE);
    const told = summed({ ...alone, answers: [said(code, answer)] }, 0.027, 0.018);
    expect(toldOf(told).told).toMatch(/Nothing is told of these turns yet: .* put right first/);
    expect(toldOf(summed(alone, 0.027, 0.018)).told).toMatch(TURN);
  });

  test('of two valves at that gap the other has its turn', () => {
    const two = about(log([setAt, closed, line(5, '2026-10-20', 0.009, { ...hot, cylinder: 1 })]));
    expect(toldOf(summed(two, 0.009, 0.02)).told).toMatch(
      /1 exhaust: loosen \.\d+ turn.*Not there yet: 3 exhaust may be sinking/,
    );
  });
});

test('a gap that is the one wanted, nearer than feelers tell two apart, takes no turn', () => {
  // 0.5 mm is .0197 in.
  const evidence = summed(about(log([line(1, '2026-11-20', 0.0197, hot)])), 0.0197, 0.02);
  expect(toldOf(evidence).told).toMatch(/No turn is needed: the lash is the one that is wanted/);
  expect(toldOf(evidence).details.workings.turnToMake).toBeUndefined();
});
