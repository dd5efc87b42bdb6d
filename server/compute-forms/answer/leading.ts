/** The output that a page shows large; where none is named, the gap left, or else the first. */
const LEADING: Readonly<Record<string, string>> = {
  lift: 'netLift',
  'cosine-error': 'trueMotion',
  'cam-timing': 'lobeSeparation',
  'ratio-through-lift': 'ratio.value',
  'spring-from-wire': 'rate',
  linkage: 'ratioAtLift',
  'piston-drop': 'actualStroke',
  'lash-hot-cold': 'coldLash',
  capability: 'cpk',
  'fastener-for-hole': 'ask',
};

export function leadingName(computation: string, names: readonly string[]): string | undefined {
  const wanted = LEADING[computation];
  if (wanted !== undefined && names.includes(wanted)) return wanted;
  return names.includes('margin') ? 'margin' : names[0];
}
