import { readNumber } from './read-number.ts';

const PER_INCH = /^(.+?)\s*(?:tpi|t\.p\.i\.?|threads? (?:per|to the|an) inch|to the inch)\s*$/i;
/** Of an inch thread its count is called its pitch; nobody calls one of less than four threads so. */
const COUNTED = /^(.+?)\s*\bpitch\s*$/i;
const FEWEST = 4;
const MOST = 999;
const LONGEST = 60;

function counted(text: string): number | undefined {
  const written = /^\d{1,3}(?:\.\d{1,3})?$/.test(text) ? Number(text) : undefined;
  const said = written === undefined ? readNumber(text, { kind: 'count' }) : undefined;
  const count = said?.ok === true ? said.value : written;
  return count !== undefined && count > 0 && count <= MOST ? count : undefined;
}

/** `20 tpi`, `twenty threads to the inch`, `24 pitch`: how many; undefined for any other text. */
export function threadsPerInch(text: string): number | undefined {
  if (text.length > LONGEST) return undefined;
  const [, perInch] = PER_INCH.exec(text) ?? [];
  if (perInch !== undefined) return counted(perInch.trim());
  const count = counted(COUNTED.exec(text)?.[1]?.trim() ?? '');
  return count !== undefined && Number.isInteger(count) && count >= FEWEST ? count : undefined;
}
