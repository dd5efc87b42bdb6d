import { z } from 'zod';
import { out, outText } from '../../../shared/schemas/outputs.ts';
import { defineComputation } from '../kit/computation.ts';
import { threadField } from '../threads/designation-field.ts';

const input = z.strictObject({
  designation: threadField('the thread as written: size and threads to the inch, or size and pitch'),
});

const output = z.object({
  nominal: out('length', 'basic major diameter'),
  pitch: out('length', 'crest to crest'),
  advancePerTurn: out('length', 'how far one turn carries the nut'),
  majorMin: out('length', 'least major diameter of the external thread'),
  majorMax: out('length', 'greatest major diameter of the external thread'),
  class: outText('class of fit the limits are for'),
});

/**
 * Size, pitch and limits of the major diameter of a stud, bolt or adjuster thread.
 *
 * Equation: pitch = 1 in / threads per inch, or as designated; advancePerTurn = pitch;
 * unified majorMax = d − es, majorMin = majorMax − Td, es = 0.3·(0.0015·∛d + 0.0015·√d + 0.015·P^⅔), Td = 0.060·P^⅔ in
 * inches, es and Td rounded to four places; metric limits as tabulated
 *
 * @param designation [1] `7/16-20`, `7/16-20 UNF`, `M8×1.25` and the like; a size alone is refused
 * @returns nominal [m], pitch [m], advancePerTurn [m], majorMin [m], majorMax [m], class [1]
 * @throws not-allowed when the text names no thread of the table, or more than one
 *
 * Validity: single-start external threads of class 2A (unified) or 6g (metric), before plating.
 * Source: ASME B1.1 (formulas of sections 5.1 and 5.8.1) for unified, ISO 965-2 for metric, as the table of threads says
 * row by row.
 */
function thread({ designation: found }: z.output<typeof input>): z.output<typeof output> {
  const { nominal, pitch, majorMin, majorMax, fitClass } = found;
  return { nominal, pitch, advancePerTurn: pitch, majorMin, majorMax, class: fitClass };
}

const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'thread',
  title: 'Thread',
  summary: 'Size, pitch, travel per turn and limits of a stud, bolt or adjuster thread.',
  words: [
    'stud',
    'bolt',
    'tpi',
    'threads per inch',
    'pitch',
    'UNC',
    'UNF',
    'metric',
    'major diameter',
    '7/16-20',
    '3/8-24',
  ],
  input,
  output,
  equation:
    'pitch = 1 in / threads per inch; class 2A: major max = d − es, major min = major max − Td, es = 0.3·(0.0015·∛d + 0.0015·√d + 0.015·P^⅔), Td = 0.060·P^⅔ in inches; class 6g as tabulated',
  tex: 'P = \\frac{1}{n}, \\quad d_{\\max} = d - 0.3\\,(0.0015\\sqrt[3]{d} + 0.0015\\sqrt{d} + 0.015P^{2/3}), \\quad d_{\\min} = d_{\\max} - 0.060P^{2/3}',
  source: 'ASME B1.1 formulas for class 2A; ISO 965-2 tables for class 6g',
  validity: 'single-start external threads of class 2A or 6g, before plating',
  assumptions: ({ designation }) => [
    'a single start: one turn moves the nut by one pitch',
    `limits of class ${designation.fitClass}, before plating; a worn or plated thread can lie outside`,
  ],
  cautions: () => [
    'Count the threads with a pitch gauge before any nut is run on: a thread that nearly fits strips.',
  ],
  example: {
    inputs: { designation: '7/16-20' },
    result: {
      nominal: inch(0.4375),
      pitch: inch(0.05),
      advancePerTurn: inch(0.05),
      majorMin: inch(0.4281),
      majorMax: inch(0.4362),
      class: '2A',
    },
  },
  headline: () => ['advancePerTurn'],
  compute: thread,
});
