import { MARK_FOUND } from '../../../shared/schemas/tip-mark.ts';

type Data = Readonly<Record<string, unknown>>;

const FOUND: Readonly<Record<string, string>> = MARK_FOUND;

function text(data: Data, name: string): string {
  const value = data[name];
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

const of = (data: Data) => `Tip mark ${text(data, 'cylinder')} ${text(data, 'valve')}`;

function how(data: Data): string {
  const found = text(data, 'found');
  return found === '' || found === 'not-said' ? '' : `, ${(FOUND[found] ?? found).toLowerCase()}`;
}

/** What the events of marks on stem ends say on the tape. */
export const MARK_SAID = {
  'tip-mark-kept': (data: Data) => ({
    kind: 'reading' as const,
    text: `${of(data)}${how(data)}`,
    value: text(data, 'readAs'),
  }),
  'tip-mark-replaced': (data: Data) => ({
    kind: 'reading' as const,
    text: `${of(data)}${how(data)}, in place of ${text(data, 'replaces')}: ${text(data, 'reason')}`,
    value: text(data, 'readAs'),
  }),
  'tip-mark-struck': (data: Data) => ({
    kind: 'note' as const,
    text: `${of(data)}: ${text(data, 'replaces')} struck out, ${text(data, 'reason')}`,
  }),
};
