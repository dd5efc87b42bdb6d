import type { z } from 'zod';
import { explainReadings as explain } from '../explain-readings/explain.ts';
import { explainInput as input, toExplainInput } from '../explain-readings/json-input.ts';
import { explainOutput as output, toExplainOutput } from '../explain-readings/json-output.ts';
import { defineComputation } from '../kit/computation.ts';

/**
 * Weighs, reading by reading, which nominal ratio an arm has and which mistakes would explain its readings.
 *
 * Equation: ln w −= ½(ln 2πs + e²/s), x += k e/s, S −= k kᵀ/s for each hypothesis, with s = hᵀSh + r,
 * e = y − μ, k = S h; P = w / Σw
 *
 * @param nominals [1] ratios the arm may have, 1 to 40, above zero
 * @param mark [1] ratio stamped on the arm, above zero; may be left out
 * @param cardLobeLift [m] this lobe on the card, above zero; may be left out
 * @param otherLobeLift [m] the cylinder's other lobe on the card, above zero; may be left out
 * @param lash [1] state of the lash, zero or set; may be left out
 * @param lashSetting [m] the lash it was set to, above zero; may be left out
 * @param alignment [1] how the plunger stands to the stem; may be left out
 * @param readings [m] readings in the order taken, 1 to 40, each with its state
 * @param answers [1] what asking found; may be left out
 * @param assumptions [1] changes to the judged chances and spreads, lengths as quantities; may be left out
 * @returns ratio, nominals, notListed, somethingElse, noMistake, explanations, rest, remaining, againstMark, settled
 * [1]; nextReading with expected lengths [m]; summary and questions in words
 * @throws out-of-range when a chance, spread or count lies outside what the inference can take
 *
 * Validity: chances are judgement; two mistakes at most; an unlisted ratio takes a near name.
 * Source: the project's design note on explaining readings (common practice and judgement, no published source);
 * the update is that of R. E. Kalman, 1960.
 */
function explainReadings(given: z.output<typeof input>): z.output<typeof output> {
  return toExplainOutput(explain(toExplainInput(given)));
}

const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'explain-readings',
  title: 'Explain readings',
  summary:
    'What would have to be true for each nominal ratio, how likely each is, and the next reading worth taking.',
  words: [
    'wrong part or wrong set-up',
    'which mistake',
    'turn missed',
    'next reading',
    'does it match the stamp',
  ],
  input,
  output,
  equation: 'ln w −= ½(ln 2πs + e²/s); x += k·e/s; S −= k·kᵀ/s; P = w/Σw',
  tex: '\\ln w \\mathrel{-}= \\tfrac12\\left(\\ln 2\\pi s+\\frac{e^2}{s}\\right),\\quad x\\mathrel{+}=\\frac{k\\,e}{s},\\quad S\\mathrel{-}=\\frac{k k^\\top}{s},\\quad P=\\frac{w}{\\sum w}',
  source:
    'design note on explaining readings: judgement and common practice, no published source; update after R. E. Kalman, 1960',
  validity: 'chances are judgement; at most two mistakes together; an unlisted ratio takes a near name',
  assumptions: (given) => [
    'chances and spreads are judged defaults of the trade; each can be changed',
    ...(given.readings.some((each) => each.spring === undefined || each.lifter === undefined)
      ? ['where spring or lifter is not said: running spring, hydraulic lifter, until it is asked']
      : []),
    ...(given.cardLobeLift === undefined ? ['no card: the lobe is known from its readings alone'] : []),
  ],
  cautions: () => ['A question, not a verdict: only a person strikes a reading out, with the reason.'],
  example: {
    inputs: {
      nominals: [1.5, 1.55, 1.6, 1.65, 1.7, 1.75, 1.8],
      mark: 1.6,
      cardLobeLift: inch(0.348),
      otherLobeLift: inch(0.339),
      lash: 'zero',
      readings: [
        { of: 'valve-lift', value: inch(0.557), pass: 1, spring: 'light', lifter: 'solid', setUp: 0 },
      ],
    },
    result: {
      ratio: { median: 1.6018591238800486, interval95: [1.5815315480954657, 1.6244461918086976] },
      nominals: [
        { ratio: 1.5, probability: 0.00021554927319443538 },
        { ratio: 1.55, probability: 0.0024763569407729082 },
        { ratio: 1.6, probability: 0.9910048910065239 },
        { ratio: 1.65, probability: 0.004567417420597718 },
        { ratio: 1.7, probability: 0.0005300131312273138 },
        { ratio: 1.75, probability: 0.0001488458442177533 },
        { ratio: 1.8, probability: 9.390549571340686e-5 },
      ],
      notListed: 0.0009630208877547697,
      somethingElse: 0.010102216887472284,
      noMistake: 0.8860151624967467,
      explanations: [
        {
          nominal: 1.6,
          causes: [],
          probability: 0.8821897821092002,
          ratio: 1.60177687555168,
          needs: 'A 1.6, if the readings are right as they stand.',
        },
      ],
      rest: 0.11781021789080198,
      remaining: [1.6],
      againstMark: 'agrees',
      settled: true,
      summary: '1.602, between 1.582 and 1.624: a 1.6, about 95 %.',
      questions: [
        {
          cause: 'plunger-tilted',
          text: 'Could the plunger lean about 2 degrees?',
          test: 'Set it parallel to the stem, seen from the front and the side, and read again.',
          probability: 0.05037374714016484,
        },
      ],
    },
  },
  headline: () => ['summary'],
  compute: explainReadings,
  heavy: true,
});
