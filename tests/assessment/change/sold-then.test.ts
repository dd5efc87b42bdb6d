import { describe, expect, test } from 'vitest';
import { evidenceOf } from '../../../server/assessment/evidence.ts';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, ScanEvidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { BuildRecord } from '../../../server/records/whole-build/build-record.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { PLAIN, read } from '../../mechanics/assessment/plain-build.ts';
import { IN } from '../../tools/evidence-of-swaps.ts';
import { callOf, recordOf } from '../../tools/record-of-evidence.ts';

/** With which arms a gap was read is asked by what they were sold as when it was read. */

const FAMILIES: Evidence['families'] = [1.5, 1.6, 1.5].map((nominalRatio, at) => ({
  id: `family-${at}`,
  code: `INV-${at}`,
  name: ['First', 'Second', 'Third'][at] ?? '',
  fits: '',
  weight: 1,
  nominalRatio,
  sizes: {},
  features: {},
}));

const GAP: SheetEvidence = { ...read(1, 'intake', 'piston-to-valve', 0.11), id: 'gap', line: 5 };
const SCAN: ScanEvidence = {
  id: 'scan',
  line: 6,
  standing: true,
  cylinder: 2,
  valve: 'intake',
  points: [0, 5, 10].map((crankAngle) => ({ crankAngle, gap: { value: 0.1 * IN }, readAs: '.100 in' })),
  readAs: '.100 in',
  tool: 'indicator',
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  arms: 'these',
};
const GIVEN: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  rockers: {},
  families: FAMILIES,
  sheet: [GAP],
  scans: [SCAN],
};

/** The record with what the rockers were sold as at first, and as from line 20 on. */
function soldTwice(first: BuildSpec['rockers'], then: BuildSpec['rockers'], given = GIVEN): BuildRecord {
  const record = recordOf(given);
  const [was] = record.revisions;
  if (was === undefined) throw new Error('the record has no revision');
  const spec = { ...record.build.spec, rockers: then };
  return {
    ...record,
    build: { ...record.build, revision: 2, spec },
    revisions: [
      { ...was, spec: { ...spec, rockers: first } },
      { ...was, revision: 2, spec },
    ],
    events: [
      {
        seq: 20,
        kind: 'build-revised',
        data: { revision: 2, reason: '' },
        by: was.by,
        byKind: 'staff',
        at: was.at,
      },
    ],
  };
}

const evidence = (record: BuildRecord): Evidence => evidenceOf(record, callOf(GIVEN));
const asked = (given: Evidence) =>
  assess(given).questions.flatMap(({ code, ask }) => (code === 'gap-arms-then' ? [ask] : []));

describe('what the arms were sold as when a gap was read', () => {
  test('a family of another ratio since is another ratio; one of the same is none', () => {
    const other = evidence(soldTwice({ family: 'First' }, { family: 'Second' }));
    expect(other.sheet.map(({ soldAsThen }) => soldAsThen)).toEqual([1.5]);
    expect(asked(other)).toEqual([
      'The arms were sold as 1.5 when 2 gaps were read, and as 1.6 now. With which arms was that?',
    ]);
    const same = evidence(soldTwice({ family: 'First' }, { family: 'Third' }));
    expect(same.sheet.map(({ soldAsThen }) => soldAsThen)).toEqual([undefined]);
    expect(asked(same)).toEqual([]);
  });

  test('what is said of them goes before their family, then and now', () => {
    const said = evidence(soldTwice({ family: 'Second', nominalRatio: 1.55 }, { family: 'Second' }));
    expect(said.sheet.map(({ soldAsThen }) => soldAsThen)).toEqual([1.55]);
  });

  test('a scan that was put right since was read when it was first entered, over however many corrections', () => {
    const record = soldTwice({ nominalRatio: 1.5 }, { nominalRatio: 1.6 });
    const [scan] = record.gapScans;
    if (scan === undefined) throw new Error('the record has no scan');
    const chain = [
      { ...scan, replacedBy: 'second' },
      { ...scan, id: 'second', seq: 21, replaces: 'scan', replacedBy: 'third' },
      { ...scan, id: 'third', seq: 30, replaces: 'second' },
    ];
    expect(evidence({ ...record, gapScans: chain }).scans?.map(({ soldAsThen }) => soldAsThen)).toEqual([
      1.5, 1.5, 1.5,
    ]);
    const late = { ...scan, id: 'late', seq: 30 };
    expect(evidence({ ...record, gapScans: [late] }).scans?.[0]?.soldAsThen).toBeUndefined();
  });

  test('no one ratio makes the gaps of buckets: nobody is asked', () => {
    const given = evidence(soldTwice({ nominalRatio: 1.5 }, { nominalRatio: 1.6 }));
    expect(asked(given)).toHaveLength(1);
    expect(asked({ ...given, engine: { ...given.engine, gear: 'bucket' } })).toEqual([]);
  });
});
