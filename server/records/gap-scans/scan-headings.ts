/** What a column of a pasted scan holds. */
export type ScanColumn =
  | { readonly holds: 'angle'; readonly side?: 'BTDC' | 'ATDC' }
  | { readonly holds: 'gap'; readonly unit?: 'in' | 'thou' | 'mm' };

/** Longer than any heading; what is longer is looked at no further. */
export const LONGEST_HEADING = 80;

const ANGLE = ['crank', 'angle', 'wheel', 'deg', 'degs', 'degree', 'degrees', '°', 'tdc'];
const GAP = ['gap', 'clearance', 'room', 'piston', 'valve', 'ptv'];
const UNITS = new Map([
  ['in', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['″', 'in'],
  ['thou', 'thou'],
  ['thousandths', 'thou'],
  ['mm', 'mm'],
  ['millimetres', 'mm'],
] as const);
const SIDES = new Map([
  ['btdc', 'BTDC'],
  ['before', 'BTDC'],
  ['atdc', 'ATDC'],
  ['after', 'ATDC'],
] as const);
/** Words that say nothing by themselves. */
const BESIDE = ['to', 'at', 'the', 'of', 'least'];

/** `Gap [thou]`: `gap`, `thou`. */
const wordsOf = (text: string): string[] => text.toLowerCase().match(/\p{L}+|[°″]/gu) ?? [];

/** Of a map the one value that its words name; nothing where they name two. */
function oneOf<Value>(words: readonly string[], named: ReadonlyMap<string, Value>): Value | undefined {
  const [first, ...more] = [...new Set(words.flatMap((word) => named.get(word) ?? []))];
  return more.length === 0 ? first : undefined;
}

/** Reads a heading; undefined for one that could be anything. */
export function readScanHeading(text: string): ScanColumn | undefined {
  if (text.length > LONGEST_HEADING) return undefined;
  const words = wordsOf(text);
  const has = (list: readonly string[]) => words.some((word) => list.includes(word));
  const unit = oneOf(words, UNITS);
  const side = oneOf(words, SIDES);
  const known = [...ANGLE, ...GAP, ...UNITS.keys(), ...SIDES.keys(), ...BESIDE];
  if (words.some((word) => !known.includes(word))) return undefined;
  const ofAngle = has(ANGLE) || has([...SIDES.keys()]);
  const ofGap = has(GAP) || has([...UNITS.keys()]);
  if (ofAngle === ofGap) return undefined;
  if (ofAngle)
    return has(['before', 'btdc']) && has(['after', 'atdc'])
      ? undefined
      : { holds: 'angle', ...(side === undefined ? {} : { side }) };
  return { holds: 'gap', ...(unit === undefined ? {} : { unit }) };
}

/** `crank gap`: two columns with a blank between, headed in one go. */
export function readBlankHeading(text: string): ScanColumn[] | undefined {
  if (text.length > LONGEST_HEADING) return undefined;
  const words = text.trim().split(/\s+/);
  for (let at = 1; at < words.length; at += 1) {
    const pair = [words.slice(0, at), words.slice(at)].map((part) => readScanHeading(part.join(' ')));
    const [one, other] = pair;
    if (one !== undefined && other !== undefined && one.holds !== other.holds) return [one, other];
  }
  return undefined;
}

export const HEADINGS_ALLOWED =
  'allowed are crank angle, BTDC or ATDC (degrees), and gap, with its unit as in gap [thou], gap, mm or gap (in)';
