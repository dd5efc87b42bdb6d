import { createHash } from 'node:crypto';

/** Seven digits: more than any reading has, and fewer than those in which two machines may differ. */
const DIGITS = 7;

export const figure = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** A value in one line, with figures in SI; what is left out is not named. */
export function inline(value: unknown): string {
  if (typeof value === 'number') return figure(value);
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return String(value);
  const members = Object.entries(value).filter(([, member]) => member !== undefined);
  return `{${members.map(([name, member]) => `${name} ${inline(member)}`).join(', ')}}`;
}

/** What stands for a text that is too long to be read. */
export const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 10);
