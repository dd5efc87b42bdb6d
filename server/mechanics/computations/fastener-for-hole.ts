import { z } from 'zod';
import { out, outList, outText, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { IN, MM } from '../kit/si.ts';
import { CANDIDATES, DEFAULT_READING_BAND, doubtBand, fitOf, HOLE_FITS } from '../threads/hole-fit.ts';
import { pitchField } from '../threads/pitch-field.ts';
import type { Thread } from '../threads/thread-table.ts';

const input = z.strictObject({
  hole: length('the hole across, as read'),
  readingBand: z
    .strictObject({
      below: length('how far under the nominal a reading still agrees', { sign: 'not-negative' }),
      above: length('how far over the nominal a reading still agrees', { sign: 'not-negative' }),
    })
    .meta({ description: 'band a reading agrees in; left out, the default of the fasteners table' })
    .optional(),
  pitch: pitchField('pitch of the fastener’s thread, crest to crest, or a text such as 20 tpi').optional(),
});

const band = (description: string) =>
  z
    .object({ below: out('length', 'under the nominal'), above: out('length', 'over the nominal') })
    .meta({ description });

const output = z.object({
  fasteners: outList(
    z.object({
      designation: outText('the thread'),
      nominal: out('length', 'hole it is made with'),
      threadMajorMin: out('length', 'least diameter over the thread'),
      threadMajorMax: out('length', 'greatest diameter over the thread'),
      offset: out('length', 'hole as read less nominal'),
      fit: outWord(HOLE_FITS, 'of the hole alone, whatever the thread'),
    }),
    'threads the hole may have been made for, the likeliest first',
  ),
  band: band('band a reading agrees in'),
  doubt: band('band beyond that, in which the hole can’t tell'),
  summary: outText('the threads that the hole agrees with, in one line; the thread itself proves'),
  ask: outText('what to ask next: the pitch, where the hole can’t part two threads').optional(),
});

/** A pitch read by gauge or rule is taken as a thread's own within this share of it. */
const PITCH_SLACK = 0.01;

/**
 * The studs and bolts that a hole in a rocker may have been made for.
 *
 * Equation: offset = hole − nominal; agrees: −below ≤ offset ≤ above; cannot-tell: within the doubt band; differs beyond
 *
 * @param hole [m] the hole across, as read, above zero
 * @param readingBand [m] `below` and `above` the nominal, both not negative; left out, the default of the table
 * @param pitch [m] pitch of the thread where it is known, above zero: only threads of that pitch, within 1 %, are
 * listed
 * @returns fasteners (designation [1], nominal [m], threadMajorMin [m], threadMajorMax [m], offset [m], fit [1]), band
 * [m], doubt [m], summary [1], ask [1] (left out where no two threads are in reach)
 *
 * Validity: plain holes of stud and bolt mounts, read with inside jaws or better. The hole suggests, the thread proves.
 * Source: sizes and bands by common practice, no published source; thread limits by ASME B1.1 and ISO 965-2.
 */
function fastenerForHole({ hole, readingBand, pitch }: z.output<typeof input>): z.output<typeof output> {
  const agreeing = readingBand ?? DEFAULT_READING_BAND;
  const listed = CANDIDATES.filter(
    ({ thread }) => pitch === undefined || Math.abs(thread.pitch - pitch) <= PITCH_SLACK * thread.pitch,
  ).map(({ thread, nominalHole }) => {
    const offset = hole - nominalHole;
    return { thread, nominal: nominalHole, offset, fit: fitOf(offset, agreeing) };
  });
  const ordered = listed.toSorted(
    (a, b) => HOLE_FITS.indexOf(a.fit) - HOLE_FITS.indexOf(b.fit) || Math.abs(a.offset) - Math.abs(b.offset),
  );
  const inReach = ordered.filter(({ fit }) => fit !== 'differs').map(({ thread }) => thread);
  return {
    fasteners: ordered.map(({ thread, nominal, offset, fit }) => ({
      designation: thread.designation,
      nominal,
      threadMajorMin: thread.majorMin,
      threadMajorMax: thread.majorMax,
      offset,
      fit,
    })),
    band: agreeing,
    doubt: doubtBand(agreeing),
    summary: summaryOf(ordered),
    ...(inReach.length > 1 ? { ask: pitchQuestion(inReach) } : {}),
  };
}

/** The threads of the best fit that there is: what the hole agrees with, or what it cannot part. */
function summaryOf(
  ordered: readonly { readonly thread: Thread; readonly fit: (typeof HOLE_FITS)[number] }[],
): string {
  const named = (fit: (typeof HOLE_FITS)[number]) =>
    ordered.filter((each) => each.fit === fit).map(({ thread }) => thread.designation);
  const agrees = named('agrees');
  if (agrees.length > 0) return agrees.join(' or ');
  const open = named('cannot-tell');
  return open.length > 0 ? `can’t tell: ${open.join(' or ')}` : 'none of the usual threads';
}

const SUGGESTS = 'The hole only suggests the fastener; its thread decides.';
const READ_TWICE = 'Read the hole twice at right angles: over .003 in apart it is not round.';

/** What a hole must warn of. `readBothWays`: it was read twice at right angles already. */
export const holeCautions = (
  result: Parameters<typeof outOfBand>[0],
  { readBothWays = false }: { readonly readBothWays?: boolean } = {},
): string[] => [...outOfBand(result), readBothWays ? SUGGESTS : `${SUGGESTS} ${READ_TWICE}`];

/** `the pitch: 18 or 24 threads to the inch, or 1.25 mm?` */
function pitchQuestion(threads: readonly Thread[]): string {
  const perInch = threads
    .filter((each) => each.system === 'unified')
    .map((each) => Math.round(IN / each.pitch));
  const millimetres = threads.filter((each) => each.system === 'metric').map((each) => each.pitch / MM);
  const numbers = (list: readonly number[]) => [...new Set(list)].sort((a, b) => a - b).join(' or ');
  const ways = [
    ...(perInch.length > 0 ? [`${numbers(perInch)} threads to the inch`] : []),
    ...(millimetres.length > 0
      ? [`${numbers(millimetres.map((each) => Number(each.toPrecision(6))))} mm`]
      : []),
  ];
  return `the pitch: ${ways.join(', or ')}?`;
}

function outOfBand({ fasteners }: z.output<typeof output>): readonly string[] {
  if (fasteners.some(({ fit }) => fit === 'agrees')) return [];
  return [
    'None of these may be right: the hole is outside every band that agrees. Try a stud or a drill shank of that size through it by hand before naming one.',
  ];
}

export const computation = defineComputation({
  name: 'fastener-for-hole',
  title: 'Fastener for a hole',
  summary: 'Which stud or bolt a hole in a rocker was made for, and what the hole can’t tell.',
  words: [
    'stud hole',
    'bolt hole',
    '3/8 stud',
    '7/16 stud',
    '5/16',
    '8 mm',
    'identify',
    'caliper',
    'hole size',
  ],
  input,
  output,
  equation:
    'offset = hole − nominal; agrees within the reading band, can’t tell within the doubt band, differs beyond',
  tex: '\\delta = d_\\mathrm{read} - d_\\mathrm{nominal}, \\qquad -b_- \\le \\delta \\le b_+',
  source:
    'sizes and bands by common practice, no published source; thread limits by ASME B1.1 (class 2A) and ISO 965-2 (class 6g)',
  validity: 'plain holes of stud and bolt mounts, read with inside jaws or better',
  assumptions: (given) => [
    'the hole is compared with what it was made for: inside jaws read a little small, wear and tilt large',
    ...(given.readingBand === undefined
      ? ['the default reading band, common practice, no published source']
      : []),
    ...(given.pitch === undefined ? [] : ['only threads of the pitch given are listed, within 1 %']),
  ],
  cautions: (_given, result) => holeCautions(result),
  example: {
    inputs: { hole: { value: 0.4355, unit: 'in' }, pitch: '20 tpi' },
    result: {
      fasteners: [
        {
          designation: '7/16-20 UNF',
          nominal: { value: 0.4375, unit: 'in' },
          threadMajorMin: { value: 0.4281, unit: 'in' },
          threadMajorMax: { value: 0.4362, unit: 'in' },
          offset: { value: -0.002, unit: 'in' },
          fit: 'agrees',
        },
      ],
      band: { below: { value: 0.004, unit: 'in' }, above: { value: 0.004, unit: 'in' } },
      doubt: { below: { value: 0.008, unit: 'in' }, above: { value: 0.012, unit: 'in' } },
      summary: '7/16-20 UNF',
    },
  },
  headline: () => ['summary'],
  compute: fastenerForHole,
});
