import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import type { NewPartReading } from '../../../shared/schemas/part-reading.ts';
import { FEATURE_WORDS, isMeasured, isPartFeature } from '../../../shared/schemas/part-words.ts';
import { allowedFor, isPossible, slipsOf } from '../../mechanics/identify/slips.ts';

type Given = Pick<NewPartReading, 'size' | 'word' | 'mark' | 'count' | 'within'>;

/** What goes into the row: a size has value and unit, a feature its word, a mark what was typed and no more. */
interface PartEntry {
  readonly typed: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly word: string | null;
  readonly read_as: string;
  readonly thread_count: number | null;
}

const fault = (pointer: string, code: InputFault['code'], detail: string): InputFault => ({
  pointer,
  code,
  detail,
});

const BESIDE = ['count', 'within'] as const;

/** Whatever does not belong to this kind of reading is refused rather than dropped. */
function strays(kind: string, given: Given, own: keyof Given): InputFault[] {
  const values = (['size', 'word', 'mark'] as const)
    .filter((name) => name !== own && given[name] !== undefined && given[name] !== '')
    .map((name) => fault(`/${name}`, 'not-allowed', `does not belong to this kind; give ${own}`));
  const beside = BESIDE.filter(
    (name) => given[name] !== undefined && !(name === 'count' ? kind === 'stud-pitch' : own === 'size'),
  ).map((name) => fault(`/${name}`, 'not-allowed', 'does not belong to this kind'));
  return [...values, ...beside];
}

/** Kept where it may be the size, or the size with a slip that the step then asks about; else refused. */
function sizeEntry(kind: string, { size, count, within }: Given): PartEntry | InputFault {
  if (size === undefined) return fault('/size', 'required', 'is missing: a length with its unit');
  const read = inches(size);
  const each = read / (count ?? 1);
  const allowed = allowedFor(kind);
  if (allowed !== undefined && !isPossible(kind, each) && slipsOf(kind, each, size.unit).length === 0) {
    const bounds = [allowed.least, allowed.most].map((value) => formatQuantity({ value, unit: 'in' }));
    return fault('/size', 'out-of-range', `is ${size.readAs}; ${bounds.join(' to ')} is allowed`);
  }
  if (within !== undefined && (inches(within) <= 0 || inches(within) >= read))
    return fault('/within', 'out-of-range', `is ${within.readAs}; it is above nothing and below the size`);
  const readAs = count === undefined ? size.readAs : `${count} threads over ${size.readAs}`;
  return {
    typed: size.typed,
    value: size.value,
    unit: size.unit,
    word: null,
    read_as: readAs,
    thread_count: count ?? null,
  };
}

const bare = { value: null, unit: null, thread_count: null } as const;

function wordEntry(kind: keyof typeof FEATURE_WORDS, { word }: Given): PartEntry | InputFault {
  const words = FEATURE_WORDS[kind];
  const text = Object.hasOwn(words, word) ? words[word] : undefined;
  if (text !== undefined) return { ...bare, typed: word, word, read_as: text };
  const allowed = Object.keys(words).join(', ');
  return word === ''
    ? fault('/word', 'required', `is missing: one of ${allowed}`)
    : fault('/word', 'not-allowed', `must be one of ${allowed}`);
}

const markEntry = ({ mark }: Given): PartEntry | InputFault =>
  mark.trim() === ''
    ? fault('/mark', 'required', 'must not be empty: the mark word for word')
    : { ...bare, typed: mark, word: null, read_as: mark };

/** The entry of a reading of `kind`; throws every fault it has. */
export function entryOf(kind: string, given: Given): PartEntry {
  const own = isMeasured(kind) ? 'size' : isPartFeature(kind) ? 'word' : 'mark';
  const entry = isMeasured(kind)
    ? sizeEntry(kind, given)
    : isPartFeature(kind)
      ? wordEntry(kind, given)
      : markEntry(given);
  const faults = [...('pointer' in entry ? [entry] : []), ...strays(kind, given, own)];
  if (faults.length > 0 || 'pointer' in entry) throw new InputFaults(faults);
  return entry;
}

/** Nothing was given but the reason: the reading is to be struck out. */
export const isEmpty = (given: Given): boolean =>
  given.size === undefined && given.word === '' && given.mark.trim() === '';
