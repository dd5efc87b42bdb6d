import { PART_KINDS, PART_MARKS } from '../../../shared/schemas/part-words.ts';

type Data = Readonly<Record<string, unknown>>;

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

function text(data: Data, name: string): string {
  const value = data[name];
  return typeof value === 'string' ? value : '';
}

const what = (data: Data) => NAMES[text(data, 'kind')] ?? text(data, 'kind');
const isMark = (data: Data) => Object.hasOwn(PART_MARKS, text(data, 'kind'));
const readText = (data: Data) => (isMark(data) ? `“${text(data, 'readAs')}”` : text(data, 'readAs'));
const at = (data: Data) => (text(data, 'place') === '' ? '' : `, ${text(data, 'place')}`);

/** What the events of a part in the hand say on the tape. */
export const PART_SAID = {
  'part-read': (data: Data) => ({
    kind: 'reading' as const,
    text: `${what(data)}${at(data)}`,
    value: readText(data),
  }),
  'part-reading-replaced': (data: Data) => ({
    kind: 'reading' as const,
    text: `${what(data)}${at(data)}, in place of ${text(data, 'replaces')}`,
    value: readText(data),
  }),
  'part-reading-struck': (data: Data) => ({
    kind: 'note' as const,
    text: `${what(data)}: ${text(data, 'replaces')} struck out, ${text(data, 'reason')}`,
  }),
};
