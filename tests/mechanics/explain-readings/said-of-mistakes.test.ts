import { describe, expect, it } from 'vitest';
import { askAbout } from '../../../server/mechanics/explain-readings/ask-about.ts';
import { needOf, needsSentence } from '../../../server/mechanics/explain-readings/needs.ts';
import type { Sizes } from '../../../server/mechanics/explain-readings/sizes.ts';
import type { Cause, Entry } from '../../../server/mechanics/explain-readings/types.ts';

/** Each size another figure, so that a sentence with the wrong one is seen. Inches and degrees. */
const SIZES: Sizes = {
  entered: 0.501,
  missingTurn: 0.602,
  extraTurn: 0.403,
  turnedRound: 0.504,
  lash: 0.015,
  lean: 7.4,
  zero: -0.026,
  lobe: 0.327,
  card: 0.348,
  cardEntered: 0.359,
  unslipped: 0.511,
  unitPutRight: 0.522,
};
const CARD: Entry = { of: 'card' };
const READING: Entry = { of: 'reading', index: 0 };

/** What each mistake is known by in a question, and in the sentence that says what must be true. */
const TOLD: readonly (readonly [Cause, Entry | undefined, RegExp, RegExp, test: RegExp])[] = [
  ['turn-too-many', undefined, /turn too many.*\.403/, /\.501 in is really \.403/, /small hand/],
  ['turn-too-few', undefined, /missed.*\.602/, /\.501 in is really \.602/, /small hand/],
  ['hand-read-backwards', undefined, /backwards.*\.504/, /\.501 in is really \.504/, /small hand/],
  ['lash-left-in', undefined, /lash of about \.015/, /lash of about \.015/, /lash out/],
  ['plunger-tilted', undefined, /about 7 degrees/, /about 7 degrees/, /parallel to the stem/],
  ['zero-moved', undefined, /zero have moved by about \.026/, /zero moved by about \.026/, /returns to zero/],
  ['wrong-card-row', CARD, /other row.*\.327/, /lifts \.327 in, not \.359/, /Touch the valve/],
  ['wrong-valve', undefined, /other valve.*\.327/, /other valve.*\.327/, /Touch the valve/],
  [
    'valve-lift-as-lobe',
    CARD,
    /\.359 in be a valve lift.*\.327/,
    /\.359 in on the card.*\.327/,
    /lobe lift or valve/,
  ],
  ['card-not-this-lobe', CARD, /another cam's.*\.327/, /about \.327 in, not \.359/, /^Read the lobe/],
  ['slip', CARD, /card say \.348 in instead of \.359/, /\.348 in was written \.359/, /Enter it again/],
  ['slip', READING, /\.501 in have been \.511/, /\.511 in was written \.501/, /Enter it again/],
  ['slip', undefined, /\.501 in have been \.511/, /\.511 in was written \.501/, /Enter it again/],
  ['unit-or-decimal', CARD, /card's \.?359.*\.348/, /card's \.?359.*\.348/, /Say the unit/],
  ['unit-or-decimal', READING, /\.?501 be in another unit.*\.522/, /reading \.?501.*\.522/, /Say the unit/],
  [
    'unlisted-fault',
    undefined,
    /something else.*by about \.026/,
    /about \.026 in too low/,
    /indicator up again/,
  ],
  ['passes-scatter', undefined, /loose/, /scatter far more/, /three more passes/],
  ['ratio-not-listed', undefined, /not listed/, /none of those listed/, /part number/],
];

describe('a mistake is asked about with its size, and with the test that settles it', () => {
  it.each(TOLD)('%s of %j', (cause, entry, question, need, test) => {
    const asked = askAbout(cause, SIZES, entry);
    expect(asked.text).toMatch(question);
    expect(asked.text).toMatch(/^Could /);
    expect(asked.test).toMatch(test);
    expect(needOf(cause, SIZES, entry)).toMatch(need);
  });

  it('a shift is told with its way, and without a size where that would be none at all', () => {
    expect(needOf('unlisted-fault', { ...SIZES, zero: 0.026 }, undefined)).toMatch(/\.026 in too high$/);
    for (const zero of [0, 0.0004, -0.0004]) {
      const none = { ...SIZES, zero };
      expect(needOf('unlisted-fault', none, undefined)).toBe('something not listed here shifted the reading');
      expect(needOf('zero-moved', none, undefined)).toBe('the zero moved');
      expect(askAbout('zero-moved', none, undefined).text).toBe('Could the zero have moved?');
    }
  });
});

describe('the sentence of an explanation', () => {
  it('names the arm and what it gives, and all that must be true for it', () => {
    expect(needsSentence(1.6, 1.652, [])).toBe(
      'A 1.6 made 3 % over, if the readings are right as they stand.',
    );
    expect(needsSentence(1.6, 1.652, ['a turn was missed'])).toBe(
      'A 1.6 that gives 1.652 here, if a turn was missed.',
    );
    expect(needsSentence(undefined, 1.652, ['one', 'two'])).toBe('An arm of about 1.652, if one and two.');
    expect(needsSentence(undefined, 1.652, ['none of those listed'])).toMatch(/^An arm of about 1\.652/);
  });
});
