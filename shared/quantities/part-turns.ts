import { readNumber } from './read-number.ts';

/** Parts of a turn that a nut is turned by: degrees of it, and flats of its hexagon. */
const PARTS: readonly (readonly [unit: RegExp, ofATurn: number])[] = [
  [/\s*(?:°|deg|degrees?)$/i, 360],
  [/\s*flats?$/i, 6],
];

/** Turns out of degrees or flats of a hexagon, as people say them: `90 degrees`, `two flats`. */
export function turnsOfParts(text: string): number | undefined {
  const trimmed = text.trim();
  for (const [unit, ofATurn] of PARTS) {
    if (!unit.test(trimmed)) continue;
    const read = readNumber(trimmed.replace(unit, ''), { kind: 'turns' });
    if (read.ok) return read.value / ofATurn;
  }
  return undefined;
}
