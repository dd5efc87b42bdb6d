import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { ScanEvidence } from '../../../server/mechanics/assessment/evidence/valves.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN, LBF, LBF_PER_IN } from '../../../server/mechanics/kit/si.ts';
import { lashAnswered } from './change/change-of-arms.ts';
import { scanOf } from './piston-scan.ts';
import { PLAIN, read } from './plain-build.ts';
import { type GapAt, pointsOf, scanEvidence, toThousandths } from './scan-evidence.ts';

/** A change from 1.5 to 1.6 of which everything that is only said is known: invented figures. */
const KNOWN: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  engine: { ...PLAIN.engine, stroke: 3.5 * IN, rodLength: 5.7 * IN },
  card: {
    assumedRatio: 1.5,
    intake: { lobeLift: 0.36 * IN, lash: 0.016 * IN, centreline: 108 * DEG },
    exhaust: { lobeLift: 0.36 * IN, lash: 0.016 * IN, centreline: 112 * DEG },
  },
  rockers: { soldAs: 1.5, planned: 1.6 },
  springs: {
    installedHeight: 1.9 * IN,
    solidHeight: 1.15 * IN,
    seatLoad: 130 * LBF,
    rate: 350 * LBF_PER_IN,
    retainerToSeal: 0.7 * IN,
  },
};

const scan = (gaps: readonly GapAt[]) =>
  scanEvidence(pointsOf(gaps, toThousandths), { id: 'scan-1', line: 7, arms: 'before' });

const nextOf = (evidence: Evidence) => assess(evidence).next;

describe('what a call about a change asks for next', () => {
  test('the arms that come off need no marks: the piston gap decides', () => {
    // 1.900 − (.360 × 1.6 − .016) − 1.150 = .190 and .700 − .560 = .140: both clear; nothing is known of the pistons.
    expect(nextOf(KNOWN)).toMatchObject({ step: 'scan', action: 'scan-intake', turns: true });
  });

  test('a scan whose least lies at its end is read on first, whatever else is not known', () => {
    const falling = scan([
      [-10, 0.2],
      [-5, 0.16],
      [0, 0.13],
      [5, 0.11],
      [10, 0.1],
    ]);
    const little: Evidence = { ...KNOWN, card: { intake: {}, exhaust: {} }, scans: [falling] };
    expect(nextOf(little)).toMatchObject({ step: 'scan', action: 'scan-intake' });
    expect(nextOf(little)?.sentence).toContain('later crank angles than 10°');
  });

  test('a piston gap too near its limit is measured before anything more is asked', () => {
    // .096 − .110 × .1 = .085 against .080, and the 2 % of either ratio alone is .0055: it can't be told.
    const near: Evidence = {
      ...KNOWN,
      taken: { intake: { lobeLiftAtClosest: 0.11 * IN }, exhaust: {} },
      sheet: [read(1, 'intake', 'piston-to-valve', 0.096, { arms: 'before' })],
    };
    const said = nextOf(near);
    expect(said).toMatchObject({ step: 'consequences', action: 'gap-close:piston-to-valve', turns: false });
    expect(said?.sentence).toBe(
      'Piston to valve on 1 intake with the planned 1.6 is close. What tells it from its limit: whether the lash was in it: with lash in, it reads that much larger.',
    );
    const zero = nextOf({ ...near, answers: [lashAnswered(near.sheet[0]?.id ?? '', 'intake', 'zero')] });
    expect(zero).toMatchObject({ action: 'gap-close:piston-to-valve', turns: true });
    expect(zero?.sentence).toBe(
      'Piston to valve on 1 intake with the planned 1.6 is close. What tells it from its limit: the gap measured on the engine.',
    );
  });
});

describe('gaps that nobody measured and that no figure gives', () => {
  /** Everything is known that is asked for before the answer: both piston gaps were scanned, far from their limit. */
  const scans = (arms: 'before' | 'these'): ScanEvidence[] => [
    scanOf('scan-1', 0.25, { arms }),
    scanOf('scan-2', 0.25, { arms, valve: 'exhaust' }),
  ];
  const WHOLE: Evidence = { ...KNOWN, scans: scans('before') };
  const TOLD: Pick<Evidence, 'notes'> = {
    notes: [{ id: 'note-1', line: 99, kind: 'advice', body: 'told', done: false }],
  };
  /** The arms are on already: their gaps are those of the engine as it is. */
  const ON_NOW: Evidence = {
    ...WHOLE,
    ...TOLD,
    call: { ...KNOWN.call, goal: 'clearances-after-a-change' },
    rockers: { soldAs: 1.6 },
    scans: scans('these'),
  };

  test('are named once the answer was told, the worst first, with how it is read', () => {
    expect(nextOf(WHOLE)?.action).toBe('said');
    const next = nextOf({ ...WHOLE, ...TOLD });
    expect(next).toMatchObject({ action: 'measure:pushrod-to-head', step: 'sheet', turns: true });
    expect(next?.sentence).toMatch(/^Measure pushrod to head on .*with the planned 1\.6\. A wire or feeler/);
    expect(next?.sentence).toContain(
      'Then: rocker to retainer, rocker slot to stud and anything to the cover.',
    );
  });

  test('each is gone once it was read on one valve of its side, and the call is closed when none is left', () => {
    const gaps = ['pushrod-to-head', 'rocker-to-retainer', 'slot-to-stud', 'cover'] as const;
    const asked = [...gaps, 'none'].map((_, count) => {
      const sheet = gaps
        .slice(0, count)
        .flatMap((kind) => [read(1, 'intake', kind, 0.12), read(1, 'exhaust', kind, 0.12)]);
      return nextOf({ ...ON_NOW, sheet })?.action;
    });
    expect(asked).toEqual([...gaps.map((kind) => `measure:${kind}`), 'close']);
  });
});
