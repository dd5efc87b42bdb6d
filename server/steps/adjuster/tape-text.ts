type Data = Readonly<Record<string, unknown>>;

function text(data: Data, name: string): string {
  const value = data[name];
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

const NUT: Readonly<Record<string, string>> = { held: ', nut had not moved', moved: ', nut had moved' };

function kept(data: Data) {
  const engine = text(data, 'engine');
  const parts = [
    `Lash ${text(data, 'cylinder')} ${text(data, 'valve')} ${text(data, 'moment') === 'set' ? 'set' : 'found'}`,
    ...(engine === 'not-said' ? [] : [engine]),
    ...(text(data, 'readOn') === '' ? [] : [`on ${text(data, 'readOn')}`]),
    ...(text(data, 'doneBy') === '' ? [] : [`by ${text(data, 'doneBy')}`]),
  ];
  return {
    kind: 'reading' as const,
    text: `${parts.join(', ')}${NUT[text(data, 'nut')] ?? ''}`,
    value: text(data, 'readAs'),
  };
}

/** What the events of the lash log say on the tape; corrections are the sheet's. */
export const LASH_SAID = { 'lash-kept': kept };
