import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import type { NewPartReading } from '../../../shared/schemas/part-reading.ts';
import { FEATURE_WORDS, isPartFeature, isPartSize } from '../../../shared/schemas/part-words.ts';
import { IDENTIFICATION_MODEL } from '../../mechanics/identify/model.ts';

type Given = Pick<NewPartReading, 'size' | 'word' | 'mark'>;

/** What goes into the row: a size has value and unit, a feature its word, a mark what was typed and no more. */
interface PartEntry {
  readonly typed: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly word: string | null;
  readonly read_as: string;
}

const fault = (pointer: string, code: InputFault['code'], detail: string): InputFault => ({
  pointer,
  code,
  detail,
});

/** Whatever does not belong to this kind of reading is refused rather than dropped. */
function strays(given: Given, own: keyof Given): InputFault[] {
  return (['size', 'word', 'mark'] as const)
    .filter((name) => name !== own && given[name] !== undefined && given[name] !== '')
    .map((name) => fault(`/${name}`, 'not-allowed', `does not belong to this kind; give ${own}`));
}

function sizeEntry(kind: keyof typeof IDENTIFICATION_MODEL.sizes, { size }: Given): PartEntry | InputFault {
  if (size === undefined) return fault('/size', 'required', 'is missing: a length with its unit');
  const { least, most } = IDENTIFICATION_MODEL.sizes[kind].allowed;
  const read = inches(size);
  if (read < least || read > most) {
    const bounds = [least, most].map((value) => formatQuantity({ value, unit: 'in' })).join(' to ');
    return fault('/size', 'out-of-range', `is ${size.readAs}; ${bounds} is allowed`);
  }
  return { typed: size.typed, value: size.value, unit: size.unit, word: null, read_as: size.readAs };
}

function wordEntry(kind: keyof typeof FEATURE_WORDS, { word }: Given): PartEntry | InputFault {
  const words = FEATURE_WORDS[kind];
  const text = Object.hasOwn(words, word) ? words[word] : undefined;
  if (text !== undefined) return { typed: word, value: null, unit: null, word, read_as: text };
  const allowed = Object.keys(words).join(', ');
  return word === ''
    ? fault('/word', 'required', `is missing: one of ${allowed}`)
    : fault('/word', 'not-allowed', `must be one of ${allowed}`);
}

/** The entry of a reading of `kind`; throws every fault it has. */
export function entryOf(kind: string, given: Given): PartEntry {
  const own = isPartSize(kind) ? 'size' : isPartFeature(kind) ? 'word' : 'mark';
  const entry = isPartSize(kind)
    ? sizeEntry(kind, given)
    : isPartFeature(kind)
      ? wordEntry(kind, given)
      : given.mark.trim() === ''
        ? fault('/mark', 'required', 'must not be empty: the mark word for word')
        : { typed: given.mark, value: null, unit: null, word: null, read_as: given.mark };
  const faults = [...('pointer' in entry ? [entry] : []), ...strays(given, own)];
  if (faults.length > 0 || 'pointer' in entry) throw new InputFaults(faults);
  return entry;
}

/** Nothing was given but the reason: the reading is to be struck out. */
export const isEmpty = (given: Given): boolean =>
  given.size === undefined && given.word === '' && given.mark.trim() === '';
