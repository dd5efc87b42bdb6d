import { FEATURE_WORDS, isPartFeature, isPartSize } from '../../../../shared/schemas/part-words.ts';
import type { ReasonDetail } from './detail.ts';
import { nameOf, sizeSaid, sizeWithin } from './size-said.ts';

type Reason = Omit<ReasonDetail, 'said'>;

const wordOf = (kind: string, value: string): string =>
  isPartFeature(kind) ? (FEATURE_WORDS[kind][value] ?? value).toLowerCase() : value;

const madeSaid = (kind: string, value: number | string): string =>
  typeof value === 'number' ? sizeSaid(value) : wordOf(kind, value);

/** No figure without how far off it may be; a guess is called one. */
function readSaid({ kind, reading, within, guess }: Reason): string {
  if (typeof reading !== 'number') return wordOf(kind, reading);
  const figure = within === undefined ? sizeSaid(reading) : sizeWithin(reading, within);
  return `${figure}${guess === true ? ' (a guess)' : ''}`;
}

/** A reading against what a family is made with: `roller diameter .496 in ± .002 against .500 in`. */
export function reasonSaid(reason: Reason): string {
  const { kind, word, madeFor, reading } = reason;
  const read = isPartSize(kind) ? `${nameOf(kind)} ${readSaid(reason)}` : readSaid(reason);
  if (word === 'not-known' || madeFor === undefined) return `${read}; the catalogue does not say`;
  return madeFor === reading ? `${read}, as made` : `${read} against ${madeSaid(kind, madeFor)}`;
}
