import {
  CONTACT,
  ENGINE_STATES,
  GOALS,
  LASH_STATES,
  LIFTERS,
  READING_KINDS,
  SPRINGS,
  sentence,
} from '../../shared/schemas/words.ts';
import type { TapeLineData } from '../../views/parts/tape-line.examples.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import { LASH_SAID } from '../steps/adjuster/tape-text.ts';
import { MARK_SAID } from '../steps/geometry/tape-text.ts';
import { PART_SAID } from '../steps/identify/tape-text.ts';
import { SHEET_SAID } from '../steps/sheet/tape-text.ts';

/** What an event says on the tape; who, when and its number are the same for all. */
export type TapeText = Pick<TapeLineData, 'kind' | 'text' | 'value' | 'due'>;

type Data = Readonly<Record<string, unknown>>;

function text(data: Data, name: string): string {
  const value = data[name];
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

const optional = (label: string, value: string, after = '') =>
  value === '' ? '' : `${label}${value}${after}`;
const valve = (data: Data) => `${text(data, 'cylinder')} ${text(data, 'valve')}`;
const marked = (label: string, value: string) => `${label} ${value === '' ? 'not said' : `“${value}”`}`;

function arm(data: Data): string {
  const marks = [
    marked('ratio stamp', text(data, 'ratioStamp')),
    marked('other number', text(data, 'otherNumber')),
    marked('box label', text(data, 'boxLabel')),
  ];
  return `${text(data, 'name')}: ${marks.join(', ')}`;
}

function setUp(data: Data): string {
  const spring = sentence(SPRINGS, text(data, 'spring')).toLowerCase();
  const lifter = sentence(LIFTERS, text(data, 'lifter')).toLowerCase();
  const lash = sentence(LASH_STATES, text(data, 'lash')).toLowerCase();
  return `Set-up ${text(data, 'number')} on ${valve(data)}: spring ${spring}, lifter ${lifter}, lash ${lash}`;
}

/** The event names its set-up by id; the tape puts the valve in. */
export const VALVE_HERE = '{valve}';

function reading(data: Data): string {
  const kind = text(data, 'kind');
  const pass = kind.startsWith('stated-') ? '' : `, pass ${text(data, 'pass')}`;
  const at = optional(' at ', text(data, 'atLobeLift'), ' of lobe lift');
  const back = optional('; hand back at ', text(data, 'zeroReturn'));
  const counted = data.counted === true ? '; small hand read' : '';
  return `${sentence(READING_KINDS, kind)}${at}, ${VALVE_HERE}${pass}${back}${counted}`;
}

const SAID: Readonly<Record<string, (data: Data) => TapeText>> = {
  ...PART_SAID,
  ...SHEET_SAID,
  ...MARK_SAID,
  ...LASH_SAID,
  'working-kept': (data) => ({ kind: 'result', text: `${text(data, 'title')}: computed and kept` }),
  'photograph-kept': (data) => ({
    kind: 'note',
    text: `Photograph kept${optional(': ', text(data, 'caption'))}`,
  }),
  'call-opened': (data) => ({
    kind: 'note',
    text: `Call ${text(data, 'number')} opened: ${sentence(GOALS, text(data, 'goal')).toLowerCase()}`,
  }),
  triage: (data) => ({
    kind: 'answer',
    text: `${sentence(ENGINE_STATES, text(data, 'engineState'))}. ${sentence(CONTACT, text(data, 'contact'))}.`,
  }),
  'hold-set': (data) => ({ kind: 'hold', text: `Do not turn it: ${text(data, 'reason')}` }),
  'hold-lifted': (data) => ({ kind: 'note', text: `Hold lifted: ${text(data, 'reason')}` }),
  'call-closed': (data) => ({ kind: 'note', text: `Call closed: ${text(data, 'outcome')}` }),
  'build-revised': (data) => ({
    kind: 'note',
    text: `Build revision ${text(data, 'revision')}${optional(': ', text(data, 'reason'))}`,
  }),
  'arm-added': (data) => ({ kind: 'note', text: arm(data) }),
  'arm-placed': (data) => ({
    kind: 'note',
    text: `${text(data, 'arm')} sits on ${valve(data)} now${optional(': ', text(data, 'reason'))}`,
  }),
  'set-up-started': (data) => ({ kind: 'note', text: setUp(data) }),
  'reading-kept': (data) => ({ kind: 'reading', text: reading(data), value: text(data, 'readAs') }),
  'reading-replaced': (data) => ({
    kind: 'reading',
    text: `${reading(data)}, in place of ${text(data, 'replaces')}`,
    value: text(data, 'readAs'),
  }),
  'reading-struck': (data) => ({
    kind: 'note',
    text: `${reading(data)}: ${text(data, 'replaces')} struck out, ${text(data, 'reason')}`,
  }),
  'question-answered': (data) => ({
    kind: 'answer',
    text: `“${text(data, 'answer')}” to: ${text(data, 'question').replaceAll('-', ' ')}`,
  }),
  'note-kept': (data) => ({ kind: 'note', text: text(data, 'body') }),
  'advice-kept': (data) => ({
    kind: 'note',
    text: `Advice: ${text(data, 'body')}${optional(' Rests on: ', text(data, 'restsOn'))}`,
  }),
  'promise-kept': (data) => ({
    kind: 'promise',
    text: text(data, 'body'),
    due: `${text(data, 'owner') || 'no owner named'}${optional(', by ', text(data, 'due'))}`,
  }),
  'promise-done': (data) => ({ kind: 'note', text: `Promise kept: ${text(data, 'body')}` }),
  'link-made': (data) => ({ kind: 'note', text: `Link made for ${text(data, 'holder')}` }),
  'link-revoked': (data) => ({ kind: 'note', text: `Link of ${text(data, 'holder')} ended` }),
};

/** An event in words; one that this page has no words for is told by its name. */
export function tapeText(event: Pick<RecordedEvent, 'kind' | 'data'>): TapeText {
  const words = SAID[event.kind];
  if (words === undefined) return { kind: 'note', text: event.kind.replaceAll('-', ' ') };
  return words(Object.fromEntries(Object.entries(event.data)));
}
