const PER_INCH = /^\s*(\d{1,3}(?:\.\d{1,3})?)\s*(?:tpi|t\.p\.i\.?|threads? (?:per|to the) inch)\s*$/i;
const LONGEST = 60;

/** `20 tpi`, `20 threads to the inch`: how many; undefined for any other text. */
export function threadsPerInch(text: string): number | undefined {
  if (text.length > LONGEST) return undefined;
  const count = Number(PER_INCH.exec(text)?.[1] ?? 0);
  return count > 0 ? count : undefined;
}
