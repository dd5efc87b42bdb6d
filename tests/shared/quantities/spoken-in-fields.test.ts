import { expect, test } from 'vitest';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { entered } from '../../../shared/schemas/entered.ts';

/*
 * What is said, in the fields of a call, where inches and where millimetres are spoken. Ways of saying: common practice,
 * no source. One inch is 25.4 mm (NIST SP 811, B.8).
 */
const ASKED = (...both: string[]) => both;

test.each([
  [
    'lobeLift',
    'four thirty-five and a half',
    '435.5 thou = .4355 in',
    ASKED('4.355 mm', '435.5 thou = .4355 in'),
  ],
  ['lobeLift', 'three fifty', '350 thou = .350 in', '350 thou = .350 in'],
  ['lobeLift', '350', ASKED('350 thou = .350 in'), ASKED('350 thou = .350 in')],
  ['hole', '7/16', '7/16 in = .4375 in', ASKED('7/16 in = .4375 in')],
  ['hole', 'four thirty-five and a half', '435.5 thou = .4355 in', '435.5 thou = .4355 in'],
  [
    'lash',
    'a sixteenth',
    ASKED('1/16 in = .0625 in', '1/16 mm = 0.0625 mm'),
    ASKED('1/16 mm = 0.0625 mm', '1/16 in = .0625 in'),
  ],
  [
    'gap',
    '7/16',
    ASKED('7/16 in = .4375 in', '7/16 mm = 0.4375 mm'),
    ASKED('7/16 mm = 0.4375 mm', '7/16 in = .4375 in'),
  ],
  ['gap', '2,05', ASKED('2.05 mm'), '2.05 mm'],
  ['gap', 'point oh one eight', '.018 in', ASKED('.018 in')],
  ['lash', '12 thou', '12 thou = .012 in', '12 thou = .012 in'],
  ['bore', 'four thirty', ASKED('4.30 in', '4.030 in'), ASKED('4.30 in', '4.030 in')],
] as const)('%s “%s”', (field, typed, inInches, inMillimetres) => {
  const schema = entered('length', 'anything', CAN_BE[field], { sign: 'any' });
  for (const [assume, said] of [
    ['in', inInches],
    ['mm', inMillimetres],
  ] as const) {
    const read = schema.safeParse({ typed, assume });
    if (read.success) expect(read.data.readAs, assume).toBe(said);
    else for (const each of said) expect(read.error.issues[0]?.message, assume).toContain(each);
    expect(read.success, assume).toBe(typeof said === 'string');
  }
});
