import type { AssessedQuantity } from '../../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { type Law, sentencesOf } from './law.ts';

/** Half a division of the finest dial on an engine [m]: nothing measured is known nearer. */
const FINEST = 0.00025 * 0.0254;
/** A load carries the spring's tolerance: 5 % of it at the least (common practice, no published source). */
const LOAD = 0.05;

function tooFine({ id, dimension, value, low, high }: AssessedQuantity): string[] {
  if (value === undefined || low === undefined || high === undefined) return [];
  const half = (high - low) / 2;
  if (low > value || high < value) return [`${id}: ${value} is outside of ${low} to ${high}`];
  if (dimension === 'length' && half < FINEST) return [`${id}: a length within ${half} m`];
  if (dimension === 'load' && half < LOAD * value - 1e-9)
    return [`${id}: a load within ${half} N of ${value}`];
  return [];
}

/** A load told to less than 5 lb. */
const FINE_LOAD = /\d*[1-46-9] lb\b/;

/** A size that is quoted is as fine as it was typed: that is its source. */
const withoutEntries = (sentence: string, { part }: Evidence): string =>
  part.reduce((text, { readAs }) => (readAs === '' ? text : text.replaceAll(readAs, '…')), sentence);

/** Law 10: no figure is finer than its source. */
export const noFigureFinerThanItsSource: Law = ({ assessment, evidence }) => {
  const { quantities, headlines } = assessment;
  const wide = new Map(
    quantities.flatMap(({ id, dimension, low, high }) =>
      dimension === 'ratio' && low !== undefined && high !== undefined
        ? [[id, (high - low) / 2 >= 0.0995]]
        : [],
    ),
  );
  return [
    ...quantities.flatMap(tooFine),
    ...sentencesOf(assessment).flatMap((sentence) => [
      ...(/\.\d{4}/.test(withoutEntries(sentence, evidence)) ? [`finer than a thousandth: ${sentence}`] : []),
      ...(FINE_LOAD.test(sentence) ? [`a load finer than 5 lb: ${sentence}`] : []),
    ]),
    ...headlines
      .filter(
        ({ quantityId, sentence }) =>
          wide.get(quantityId ?? '') === true && /\b1\.\d{3}, between/.test(sentence),
      )
      .map(({ id, sentence }) => `${id}: three places on a wide interval: ${sentence}`),
  ];
};
