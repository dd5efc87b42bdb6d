import { z } from 'zod';
import { LONGEST } from './refuse.ts';

/** One of a fixed list of words. */
export function choice<const Words extends readonly [string, ...string[]]>(
  words: Words,
  description: string,
) {
  return z.enum(words).meta({ description });
}

/** A list of objects, no longer than `most`. */
export function listOf<Item extends z.ZodType>(item: Item, description: string, least = 1, most = LONGEST) {
  return z.array(item).min(least).max(most).meta({ description });
}
