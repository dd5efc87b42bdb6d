import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';

type Data = Readonly<Record<string, unknown>>;

const KINDS: Readonly<Record<string, string>> = SHEET_KINDS;

function text(data: Data, name: string): string {
  const value = data[name];
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null;
const listOf = (data: Data, name: string): Data[] => {
  const list = data[name];
  return Array.isArray(list) ? list.filter(isData) : [];
};

const one = (data: Data) =>
  `${KINDS[text(data, 'kind')] ?? text(data, 'kind')} ${text(data, 'cylinder')} ${text(data, 'valve')}`;

/** How many readings of one entry the tape spells out; a whole sheet is told by its count. */
const SPELT = 4;

function kept(data: Data) {
  const readings = listOf(data, 'readings');
  const spelt = readings.map((each) => `${one(each)} ${text(each, 'readAs')}`).join('; ');
  return {
    kind: 'reading' as const,
    text: readings.length > SPELT ? `${readings.length} readings on the per-valve sheet` : `Sheet: ${spelt}`,
  };
}

function consequences(data: Data) {
  const gaps = listOf(data, 'gaps');
  const of = (word: string) =>
    gaps.filter((gap) => text(gap, 'verdict') === word).map((gap) => text(gap, 'name').replaceAll('-', ' '));
  const [short, close, clear] = [of('short'), of('close'), of('clear')];
  const parts = [
    ...(short.length > 0 ? [`short: ${short.join(', ')}`] : []),
    ...(close.length > 0 ? [`close: ${close.join(', ')}`] : []),
    ...(clear.length > 0 ? [`clear: ${clear.join(', ')}`] : []),
  ];
  return {
    kind: 'result' as const,
    text: `What the ratio does on ${text(data, 'cylinder')} ${text(data, 'valve')}: ${parts.join('; ') || 'no gap known yet'}`,
  };
}

/** What the events of the sheet and of its consequences say on the tape. */
export const SHEET_SAID = {
  'sheet-readings-kept': kept,
  'sheet-reading-replaced': (data: Data) => ({
    kind: 'reading' as const,
    text: `${one(data)}, in place of ${text(data, 'replaces')}: ${text(data, 'reason')}`,
    value: text(data, 'readAs'),
  }),
  'sheet-reading-struck': (data: Data) => ({
    kind: 'note' as const,
    text: `${one(data)}: ${text(data, 'replaces')} struck out, ${text(data, 'reason')}`,
  }),
  'consequences-kept': consequences,
};
