import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { saidInputs } from '../../../server/compute/said-inputs.ts';
import { computation as adjuster } from '../../../server/mechanics/computations/adjuster.ts';
import { computation as lifterPreload } from '../../../server/mechanics/computations/lifter-preload.ts';
import { computation as pushrodLength } from '../../../server/mechanics/computations/pushrod-length.ts';
import { readForm } from '../../../server/web/forms/read-form.ts';
import { buildSpec } from '../../../shared/schemas/build-spec.ts';
import { newReading } from '../../../shared/schemas/commands.ts';
import { newGapScan } from '../../../shared/schemas/gap-scan.ts';
import { newLashLine } from '../../../shared/schemas/lash-log.ts';
import { newSetUp } from '../../../shared/schemas/method.ts';
import { newPartReading } from '../../../shared/schemas/part-reading.ts';
import { newSheetReadings } from '../../../shared/schemas/sheet.ts';
import { newTipMark } from '../../../shared/schemas/tip-mark.ts';
import { fieldsOf, type Leaf } from '../../tools/fields-of-schema.ts';

/*
 * What is said in each field of a call that is no length: what it is read as, or what is said back. Ways of saying:
 * common practice, no source. A field that no row names fails the test.
 */

type Said = readonly [said: string, read: string | number | RegExp];

const FEW: readonly Said[] = [
  ['two', 2],
  ['one and a half', /whole number/],
  ['a hundred and ten', /or less/],
];
const COUNT: readonly Said[] = [
  ['eight', 8],
  ['8', 8],
  ['one and a half', /whole number/],
];
const RATIO: readonly Said[] = [
  ['one six', 1.6],
  ['one point six five', 1.65],
  ['1,6', 1.6],
  ['one sixty', 1.6],
  ['a hundred and ten', /beyond any machine part/],
  ['24 pitch', /must be a bare number/],
];
const CENTRELINE: readonly Said[] = [
  ['one oh eight', '108 deg'],
  ['a hundred and ten', '110 deg'],
  ['110.5', '110.5 deg'],
  ['one ten and a half', '110.5 deg'],
  ['two fifty-five', /is 255 deg; from 40 deg to 200 deg is allowed/],
  ['two turns', /the unit "turns"/],
];
const DURATION: readonly Said[] = [
  ['two fifty-five', '255 deg'],
  ['two oh eight', '208 deg'],
  ['eight', /from 10 deg to 500 deg/],
];

const OF_CALL: Readonly<Record<string, readonly Said[]>> = {
  cylinders: COUNT,
  cylinder: COUNT,
  pass: COUNT,
  count: COUNT,
  intakeValves: FEW,
  exhaustValves: FEW,
  assumedRatio: RATIO,
  nominalRatio: RATIO,
  plannedRatio: RATIO,
  plannedExhaustRatio: RATIO,
  alsoPlanned: RATIO,
  valveAngle: [
    ['twenty-three', '23 deg'],
    ['23.5', '23.5 deg'],
    // No inches in a field for degrees: 1.08 in was once offered here.
    ['one oh eight', /^is 108 deg; from 0 deg to 80 deg is allowed$/],
  ],
  centreline: CENTRELINE,
  duration: DURATION,
  seatLoad: [
    ['one thirty', '130 lbf'],
    ['a hundred and thirty pounds', '130 lbf'],
    ['130.5', '130.5 lbf'],
    // The load over the nose is another one than on the seat: it is not taken for it.
    ['three fifty over the nose', /the unit "over the nose" is not known/],
    ['two', /from 5 lbf to 2000 lbf/],
  ],
  rate: [
    ['three fifty', '350 lbf/in'],
    ['three hundred pounds an inch', '300 lbf/in'],
    ['three hundred pounds per inch', '300 lbf/in'],
    ['fifty newtons a millimetre', '50 N/mm'],
    ['eight', /Is it 8 N\/mm\?/],
  ],
  crankAngle: [
    ['ten before', '10° before TDC'],
    ['ten after', '10° after TDC'],
    ['twelve and a half degrees ATDC', '12.5° after TDC'],
    ['TDC', 'TDC'],
    ['three fifty', /350° is 10 BTDC/],
  ],
};

const FORMS = {
  spec: buildSpec,
  scan: newGapScan,
  lash: newLashLine,
  setUp: newSetUp,
  reading: newReading,
  sheet: newSheetReadings,
  part: newPartReading,
  mark: newTipMark,
};

const lastOf = ({ path }: Leaf): string => path.split('.').at(-1) ?? '';
const isLength = ({ info }: Leaf): boolean => 'dimension' in info && info.dimension === 'length';

const fields = Object.entries(FORMS).flatMap(([form, schema]) =>
  fieldsOf(schema)
    .filter((leaf) => !isLength(leaf) && leaf.info.control !== 'text')
    .map((leaf) => ({ form, leaf, name: lastOf(leaf) })),
);

const readAs = z.union([z.number(), z.object({ readAs: z.string() }).transform((entered) => entered.readAs)]);

describe('each field of a call that is no length', () => {
  test('has a row, and each row a field', () => {
    expect([...new Set(fields.map(({ name }) => name))].sort()).toEqual(Object.keys(OF_CALL).sort());
  });

  test.each(fields)('$form $leaf.path', ({ leaf, name }) => {
    for (const [said, read] of OF_CALL[name] ?? []) {
      const got = readForm(z.strictObject({ field: leaf.schema }), { field: said }, { lengths: 'in' });
      if (read instanceof RegExp) {
        expect(got.ok, said).toBe(false);
        expect(got.ok ? '' : got.faults[0]?.detail, said).toMatch(read);
      } else {
        expect(got.ok ? readAs.parse(got.data.field) : got.faults, said).toBe(read);
      }
    }
  });
});

/** What is turned, and the threads it is turned on. */
const OF_COMPUTATIONS: Readonly<Record<string, readonly Said[]>> = {
  turns: [
    ['one and three quarter turns', 1.75],
    ['half a turn', 0.5],
    ['two', 2],
    ['a hundred and ten', /is 110 turns/],
  ],
  pitch: [
    ['24 tpi', 0.0254 / 24],
    ['24 pitch', 0.0254 / 24],
    ['twenty-four pitch', 0.0254 / 24],
    ['twenty threads an inch', 0.0254 / 20],
    ['.050 in', 0.05 * 0.0254],
    // Of a metric thread the pitch is a length: without a unit nobody knows.
    ['1.25 pitch', /unit/],
  ],
  // A pitch alone is enough to work a turn out; a size alone is not.
  thread: [['quarter inch', /must be a thread such as 7\/16-20/]],
};

const turned = [adjuster, lifterPreload, pushrodLength].flatMap(({ name, input }) =>
  fieldsOf(input)
    .map((leaf) => ({ computation: name, leaf, name: lastOf(leaf) }))
    .filter((each) => each.name in OF_COMPUTATIONS),
);

describe('what is turned, and its thread', () => {
  test('each row has a field', () => {
    expect(new Set(turned.map(({ name }) => name))).toEqual(new Set(Object.keys(OF_COMPUTATIONS)));
  });

  test.each(turned)('$computation $name', ({ leaf, name, computation }) => {
    for (const [said, read] of OF_COMPUTATIONS[name] ?? []) {
      const schema = z.strictObject({ field: leaf.schema });
      const { inputs, faults } = saidInputs(schema, { field: said });
      const got = schema.safeParse(inputs);
      const fault = faults[0]?.detail ?? got.error?.issues[0]?.message;
      if (read instanceof RegExp) expect(fault, `${computation}: ${said}`).toMatch(read);
      else {
        expect(fault, said).toBeUndefined();
        expect(z.number().parse(got.data?.field), said).toBeCloseTo(Number(read), 12);
      }
    }
  });
});
